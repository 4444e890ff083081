import { chainEnd, chainStart } from '../../geometry/chain.ts';
import { distance } from '../../geometry/point.ts';
import { sin } from '../../geometry/trig.ts';
import { fallApart } from '../../pattern/fall-apart.ts';
import { legsOf } from '../../pattern/outline.ts';
import { sidesOf } from '../../pattern/turn-into.ts';
import type { Dart, Piece } from '../../pattern/types.ts';
import type { TurnFact } from '../../recipe/types.ts';
import { closedBeside } from '../causes/closed-beside.ts';
import { turnCause } from '../causes/turn.ts';
import { at, dimension, fact, missing, names, near, note, refusedBy, tolerance } from '../finding.ts';
import { slashesFrom, slashesOn, type Slashed } from '../slashes.ts';
import { ownDart, ownFront } from '../table.ts';
import type { Check, CheckSpec, Finding, StepContext } from '../types.ts';

/** The legs' ends: `mouth` on the edge, `tips` at the point; mm. */
function endsOf(piece: Piece, dart: Dart) {
  const legs = legsOf(piece, dart);
  return (
    legs && {
      mouth: [chainStart(legs.into.chain), chainEnd(legs.outOf.chain)] as const,
      tips: [chainEnd(legs.into.chain), chainStart(legs.outOf.chain)] as const,
    }
  );
}

/** The share of the moved angle that goes into the i-th opening: as the step says, or the same for each. */
const shareOf = (spec: CheckSpec, i: number, of: number): number =>
  spec.numbers?.[`share-${i + 1}`] ?? 1 / of;

/** The sheet that a turn turned, when it lies on the side of the two darts that is freed: the one without the centre front. */
function freedBy(piece: Piece, turn: TurnFact | undefined): string | undefined {
  if (turn?.into === undefined) return undefined;
  const sides = sidesOf(fallApart(piece), turn.dart, turn.into);
  return 'ok' in sides && sides.ok.freed.has(turn.part) ? turn.part : undefined;
}

/** How the dart itself ended: its parts together in the tip, its legs on each other, or open by the share that was to stay. */
function closing(context: StepContext, spec: CheckSpec, id: string, turns: readonly TurnFact[]): Finding[] {
  const { before, after } = context;
  const found = ownDart(after, id);
  const ends = found && endsOf(found.piece, found.dart);
  if (!found || !ends) return [missing('dart-moved/turned', { about: { dart: id } })];
  const { piece, dart } = found;
  const about = { dart: id };
  const [tipIn, tipOut] = ends.tips;
  const [endIn, endOut] = ends.mouth;
  const drift = distance(tipIn, tipOut);
  const seen = { drift, pivot: tolerance(spec, 'pivot').value, freed: freedBy(piece, turns.at(-1)) };
  const cause = () => turnCause(before, after, dart, turns, seen);
  const stays = (spec.numbers?.['left'] ?? 0) * (turns[0]?.before ?? 0);
  const gap = distance(endIn, endOut) * (dart.residual < 0 ? -1 : 1);
  const wanted = 2 * distance(tipOut, endOut) * sin(stays / 2);
  return [
    near('dart-moved/pivot', 'mm', drift, 0, tolerance(spec, 'pivot'), {
      where: dimension(tipIn, tipOut),
      cause,
      about,
    }),
    near('dart-moved/residual', 'mm', gap, wanted, tolerance(spec, 'gap'), {
      where: dimension(endIn, endOut),
      cause,
      about,
    }),
  ];
}

/** What a dart that was closed though it is to stay open is told by. */
const TO_STAY = { code: 'dart-to-stay' } as const;

/** Nothing was turned of a dart; perhaps another one was closed in its stead. */
function notTurned({ before, after }: StepContext, spec: CheckSpec, dart: string): Finding {
  const beside = closedBeside(before, after, names(spec, 'darts'));
  return missing('dart-moved/turned', { about: beside ? { dart, stays: beside.dart } : { dart } });
}

/** One opening: cut to the tip and not through it, and as wide at the edge as its share of the angle makes it. */
function opening(
  { before, after }: StepContext,
  slash: Slashed,
  edge: string,
  angle: number,
  spec: CheckSpec,
): Finding[] {
  const { piece, line } = slash;
  const dart = slash.dart!;
  const about = { slash: line.id, edge };
  const ends = endsOf(piece, dart);
  if (!ends) return [missing('dart-moved/cut', { about })];
  const hinge = piece.hinges.find((h) => h.dart === dart.id);
  const through = hinge !== undefined && !hinge.intact;
  const [p, q] = ends.mouth;
  // 2 L sin(θ/2), trade notes, derived; L from the tip, straight across to the edge, also where the leg bends at an alternate pivot.
  const wide = (turned: number): number => 2 * distance(ends.tips[1], q) * sin(turned / 2);
  const width = distance(p, q) * (dart.residual < 0 ? -1 : 1);
  const allowed = tolerance(spec, 'opening');
  const beside = closedBeside(before, after, names(spec, 'darts'), dart.id);
  const too = beside && Math.abs(width - wide(angle + beside.by)) <= allowed.value ? beside : undefined;
  return [
    through
      ? fact('dart-moved/hinge', false, { where: at(ends.tips[0]), cause: { code: 'cut-through' }, about })
      : fact('dart-moved/hinge', true, { about }),
    near('dart-moved/opening', 'mm', width, wide(angle), allowed, {
      where: dimension(p, q),
      cause: too && TO_STAY,
      about: too ? { ...about, open: too.dart } : about,
    }),
  ];
}

/**
 * The darts `names.darts` were moved into slashes from `names.edges`: each dart is closed (or keeps the share `numbers.left` of its
 * angle), the parts hang together in the bust point, and each opening has its share of the angle (`numbers.share-1` ..., equal where the step does not
 * say). Judged by what lies on the table, whether it was cut and turned or pinned and traced. Tolerances `pivot`, `gap`, `opening` in mm.
 */
export const dartMoved: Check = (context, spec) => {
  const { after, unfollowed } = context;
  const edges = names(spec, 'edges');
  const slashes = slashesFrom(slashesOn(after), edges);
  const findings: Finding[] = [];
  slashes.forEach((slash, i) => {
    if (slash?.dart) return;
    const about = { edge: edges[i]!, ...(slash && { slash: slash.line.id }) };
    const refusal = unfollowed.find(({ command }) => ['cut-slash', 'pivot', 'turn'].includes(command.do));
    findings.push(
      refusal ? refusedBy('dart-moved/cut', refusal.refused, about) : missing('dart-moved/cut', { about }),
    );
  });
  if (findings.length > 0) return findings;

  let moved = 0;
  for (const id of names(spec, 'darts')) {
    const turns = after.turns.filter((turn) => turn.dart === id);
    if (turns.length === 0) {
      findings.push(notTurned(context, spec, id));
      continue;
    }
    moved += turns[0]!.before * (1 - (spec.numbers?.['left'] ?? 0));
    findings.push(...closing(context, spec, id, turns));
  }
  if (findings.some((f) => f.state === 'missing')) return findings;
  slashes.forEach((slash, i) => {
    const angle = moved * shareOf(spec, i, edges.length);
    findings.push(...opening(context, slash!, edges[i]!, angle, spec));
  });
  const turned = ownFront(after).flatMap((piece) =>
    piece.parts.filter((part) => part.grain === 'void').map((part) => part.id),
  );
  if (turned.length > 0) findings.push(note('dart-moved/grain', { about: { part: turned.join(', ') } }));
  return findings;
};
