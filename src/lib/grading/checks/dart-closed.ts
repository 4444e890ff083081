import { chainEnd, chainStart } from '../../geometry/chain.ts';
import { distance } from '../../geometry/point.ts';
import { sin } from '../../geometry/trig.ts';
import type { Point } from '../../geometry/types.ts';
import { legsOf } from '../../pattern/outline.ts';
import { bankOf } from '../../pattern/style-seam.ts';
import type { Dart, Edge, Piece } from '../../pattern/types.ts';
import type { Work } from '../../recipe/types.ts';
import { turnCause } from '../causes/turn.ts';
import { at, dimension, fact, missing, names, near, note, refusedBy, tolerance } from '../finding.ts';
import { dartOf, ownFront } from '../table.ts';
import type { Check, CheckSpec, Finding } from '../types.ts';

/** The edges that were cut along the line between a foot (mm from its start) and one of its ends: bank a and bank b. */
function banksBeyond(piece: Piece, line: string, end: 'start' | 'end', foot: number): Edge[] {
  const found: Edge[] = [];
  for (const part of piece.parts) {
    for (const edge of part.edges) {
      const { role, origin } = edge;
      if (role !== 'style-line' || origin.edge !== line) continue;
      if (end === 'start' ? origin.from < foot - 1e-3 : origin.to > foot + 1e-3) found.push(edge);
    }
  }
  return found;
}

/** The end of a bank that lies nearest to the line's end on the seam: bank a runs against the line, bank b along it. */
const outerEnd = (bank: Edge, end: 'start' | 'end'): Point =>
  (bankOf(bank) === 'a') === (end === 'start') ? chainEnd(bank.chain) : chainStart(bank.chain);

/** The opening where the dart went: its width at the seam, 2 L sin(θ/2) with L from the dart's tip (trade notes, derived). */
function opening(after: Work, piece: Piece, dart: Dart, tip: Point, spec: CheckSpec): Finding[] {
  const line = after.lines.find((candidate) => candidate.id === names(spec, 'line')[0]);
  if (!line) return [];
  // After separating the two banks lie on two pieces: where these lie to each other says nothing.
  if (piece.id !== 'front') return [];
  const wanted = names(spec, 'end');
  const end = line.ends[0] !== undefined && wanted.includes(line.ends[0]) ? 'start' : 'end';
  const banks = banksBeyond(piece, line.id, end, line.feet[dart.id]?.at ?? 0);
  const about = { dart: dart.id, edge: wanted[0]! };
  const [a, b] = banks;
  if (!a || !b)
    return [fact('dart-closed/end', false, { where: at(tip), cause: { code: 'other-end' }, about })];
  const [p, q] = [outerEnd(a, end), outerEnd(b, end)];
  const turned = after.turns.find((turn) => turn.dart === dart.id);
  const angle = turned?.before ?? after.block.facts.dartAngle;
  const expected = 2 * distance(tip, q) * sin(angle / 2);
  return [
    near('dart-closed/opening', 'mm', distance(p, q), expected, tolerance(spec, 'opening'), {
      where: dimension(p, q),
      about,
    }),
  ];
}

/**
 * Steps 7 and 8: the dart `names.dart` was slashed to its tip, not through it, and its legs meet. Judged by what lies on the table:
 * the tips of the two legs on each other (the pivot held), their outer ends on each other (gap positive, overlap negative),
 * and, while the front is still one piece, the opening at the end `names.end` of the line. Tolerances `pivot`, `gap`, `opening` in mm.
 */
export const dartClosed: Check = ({ before, after, unfollowed }, spec) => {
  const id = names(spec, 'dart')[0]!;
  const about = { dart: id };
  const found = dartOf(ownFront(after), id);
  const cut = found?.piece.parts.some((part) =>
    part.edges.some((e) => e.role === 'connector' && e.dart === id),
  );
  const legs = found && legsOf(found.piece, found.dart);
  if (!found || !cut || !legs) {
    const refusal = unfollowed.find(({ command }) => command.do === 'slash' && command.dart === id);
    return [
      refusal
        ? refusedBy('dart-closed/slashed', refusal.refused, about)
        : missing('dart-closed/slashed', { about }),
    ];
  }
  const { piece, dart } = found;
  const hinge = piece.hinges.find((candidate) => candidate.dart === id);
  const [tipIn, tipOut] = [chainEnd(legs.into.chain), chainStart(legs.outOf.chain)];
  const [endIn, endOut] = [chainStart(legs.into.chain), chainEnd(legs.outOf.chain)];
  const findings: Finding[] = [];
  if (hinge && !hinge.intact) {
    findings.push(
      fact('dart-closed/hinge', false, { where: at(tipOut), cause: { code: 'cut-through' }, about }),
    );
  } else findings.push(fact('dart-closed/hinge', true, { about }));
  const turns = after.turns.filter((turn) => turn.dart === id);
  if (turns.length === 0) return [...findings, missing('dart-closed/turned', { about, where: at(tipOut) })];

  const gap = distance(endIn, endOut) * (dart.residual < 0 ? -1 : 1);
  const drift = distance(tipIn, tipOut);
  const seen = { drift, pivot: tolerance(spec, 'pivot').value, freed: hinge?.parts[0] };
  const cause = () => turnCause(before, after, dart, turns, seen);
  findings.push(
    near('dart-closed/pivot', 'mm', drift, 0, tolerance(spec, 'pivot'), {
      where: dimension(tipIn, tipOut),
      cause,
      about,
    }),
  );
  const closed = near('dart-closed/residual', 'mm', gap, 0, tolerance(spec, 'gap'), {
    where: dimension(endIn, endOut),
    cause,
    about,
  });
  findings.push(closed);
  if (closed.state === 'right') findings.push(...opening(after, piece, dart, tipOut, spec));
  const turned = piece.parts.filter((part) => part.grain === 'void').map((part) => part.id);
  if (turned.length > 0)
    findings.push(note('dart-closed/grain', { about: { dart: id, part: turned.join(', ') } }));
  return findings;
};
