import { chainEnd, chainStart } from '../../geometry/chain.ts';
import { distance } from '../../geometry/point.ts';
import { sin } from '../../geometry/trig.ts';
import type { Point } from '../../geometry/types.ts';
import { legsOf } from '../../pattern/outline.ts';
import { bankOf } from '../../pattern/style-seam.ts';
import type { Dart, Edge, Piece } from '../../pattern/types.ts';
import type { TurnFact, Work } from '../../recipe/types.ts';
import { turnCause } from '../causes/turn.ts';
import { at, dimension, fact, missing, names, near, note, refusedBy, tolerance } from '../finding.ts';
import { lineOf, ownDart } from '../table.ts';
import type { Check, CheckSpec, Finding } from '../types.ts';

/** The edges that were cut along the line between a foot (mm from its start) and one of its ends: bank a and bank b. */
function banksBeyond(
  piece: Piece,
  line: string,
  end: 'start' | 'end',
  foot: number,
): readonly [Edge?, Edge?] {
  let first: Edge | undefined;
  for (const part of piece.parts) {
    for (const edge of part.edges) {
      const { role, origin } = edge;
      if (role !== 'style-line' || origin.edge !== line) continue;
      if (end === 'start' ? origin.from >= foot - 1e-3 : origin.to <= foot + 1e-3) continue;
      if (first !== undefined) return [first, edge];
      first = edge;
    }
  }
  return first === undefined ? [] : [first];
}

/** The end of a bank that lies nearest to the line's end on the seam: bank a runs against the line, bank b along it. */
const outerEnd = (bank: Edge, end: 'start' | 'end'): Point =>
  (bankOf(bank) === 'a') === (end === 'start') ? chainEnd(bank.chain) : chainStart(bank.chain);

/** The first turn that a dart took. */
function firstTurn(work: Work, dart: string): TurnFact | undefined {
  for (const turn of work.turns) if (turn.dart === dart) return turn;
  return undefined;
}

/** Whether the connector of the dart was cut. */
function isSlashed(piece: Piece, dart: string): boolean {
  for (const part of piece.parts)
    for (const e of part.edges) if (e.role === 'connector' && e.dart === dart) return true;
  return false;
}

/** The opening where the dart went: its width at the seam, 2 L sin(θ/2) with L from the dart's tip (trade notes, derived). */
function opening(after: Work, piece: Piece, dart: Dart, tip: Point, spec: CheckSpec): Finding[] {
  const line = lineOf(after, names(spec, 'line')[0]);
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
  const p = outerEnd(a, end);
  const q = outerEnd(b, end);
  const angle = firstTurn(after, dart.id)?.before ?? after.block.facts.dartAngle;
  const expected = 2 * distance(tip, q) * sin(angle / 2);
  return [
    near('dart-closed/opening', 'mm', distance(p, q), expected, tolerance(spec, 'opening'), {
      where: dimension(p, q),
      about,
    }),
  ];
}

/** The sheets that were turned, by name. */
function turnedParts(piece: Piece): string {
  let turned = '';
  for (const { id, grain } of piece.parts) if (grain === 'void') turned += turned === '' ? id : `, ${id}`;
  return turned;
}

/**
 * Steps 7 and 8: the dart `names.dart` was slashed to its tip, not through it, and its legs meet. Judged by what lies on the table:
 * the tips of the two legs on each other (the pivot held), their outer ends on each other (gap positive, overlap negative),
 * and, while the front is still one piece, the opening at the end `names.end` of the line. Tolerances `pivot`, `gap`, `opening` in mm.
 */
export const dartClosed: Check = ({ before, after, unfollowed }, spec) => {
  const id = names(spec, 'dart')[0]!;
  const about = { dart: id };
  const found = ownDart(after, id);
  const legs = found && legsOf(found.piece, found.dart);
  if (!found || !legs || !isSlashed(found.piece, id)) {
    const refusal = unfollowed.find(({ command }) => command.do === 'slash' && command.dart === id);
    return [
      refusal
        ? refusedBy('dart-closed/slashed', refusal.refused, about)
        : missing('dart-closed/slashed', { about }),
    ];
  }
  const { piece, dart } = found;
  const hinge = piece.hinges.find((candidate) => candidate.dart === id);
  const tipIn = chainEnd(legs.into.chain);
  const tipOut = chainStart(legs.outOf.chain);
  const endIn = chainStart(legs.into.chain);
  const endOut = chainEnd(legs.outOf.chain);
  const findings: Finding[] = [];
  if (hinge && !hinge.intact) {
    findings.push(
      fact('dart-closed/hinge', false, { where: at(tipOut), cause: { code: 'cut-through' }, about }),
    );
  } else findings.push(fact('dart-closed/hinge', true, { about }));
  if (!firstTurn(after, id)) {
    findings.push(missing('dart-closed/turned', { about, where: at(tipOut) }));
    return findings;
  }

  const gap = distance(endIn, endOut) * (dart.residual < 0 ? -1 : 1);
  const drift = distance(tipIn, tipOut);
  const seen = { drift, pivot: tolerance(spec, 'pivot').value, freed: hinge?.parts[0] };
  const cause = () => {
    const turns = after.turns.filter((turn) => turn.dart === id);
    return turnCause(before, after, dart, turns, seen);
  };
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
  const part = turnedParts(piece);
  if (part !== '') findings.push(note('dart-closed/grain', { about: { dart: id, part } }));
  return findings;
};
