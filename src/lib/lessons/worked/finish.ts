import { chainStart } from '../../geometry/chain.ts';
import { onFold } from '../../pattern/centre.ts';
import { baseId, piecesOf } from '../../pattern/copy.ts';
import { outlineOf, seamGroups } from '../../pattern/outline.ts';
import { seamOf, styleRun } from '../../pattern/seam.ts';
import type { EdgeRole, Piece } from '../../pattern/types.ts';
import { anchorInside } from '../../recipe/anchors.ts';
import type { Fabric, Work } from '../../recipe/types.ts';
import type { Hand, Worked } from './give.ts';

const BLEND = 25;
const PLACES = [
  { piece: 'lower', dart: 'right', end: 'start', edge: 'right/shoulder' },
  { piece: 'upper', dart: 'left', end: 'end', edge: 'left/side' },
] as const;

/**
 * Step 10: a copy for the woven; the knit's leftover is eased in, the woven's is taken out. `worked: {by: "leftover", sets: "one"}`: of the one
 * set that is there, as its cloth wants it.
 */
export const leftover: Worked = (hand) => {
  if (hand.rule.worked?.['sets'] === 'one') {
    if (hand.fabric === 'knit') easeIn(hand);
    else takeOut(hand);
    return;
  }
  hand.give({ do: 'copy', as: 'woven' });
  easeIn(hand);
  takeOut(hand, 'woven');
};

function easeIn(hand: Hand): void {
  for (const { piece, dart } of PLACES) {
    hand.give({ do: 'bridge', piece, dart, before: BLEND, after: BLEND });
    const { towardsStart, towardsEnd } = notchesRound(hand.work, piece, dart);
    const [from, to] = [towardsStart.at(-1), towardsEnd[0]];
    if (from !== undefined && to !== undefined) hand.give({ do: 'ease', piece, dart, from, to });
  }
}

/** `as`: on the copy for that cloth. */
function takeOut(hand: Hand, as?: Fabric): void {
  for (const { piece: plain, dart, end, edge } of PLACES) {
    const piece = as === undefined ? plain : `${plain}@${as}`;
    hand.give({ do: 'bridge', piece, dart, before: BLEND, after: BLEND });
    const { towardsStart, towardsEnd } = notchesRound(hand.work, piece, dart);
    hand.give({ do: 'take-out', piece, dart, end, amount: 'measured' });
    hand.give({ do: 'true', edge, ...(as === undefined ? {} : { as }) });
    for (const notch of end === 'start' ? towardsStart : towardsEnd)
      hand.give({ do: 'renotch', piece, notch });
  }
}

/** The notches of a piece's style seam on either side of a dart's opening, in the direction of the line. */
function notchesRound(work: Work, id: string, dart: string): Record<'towardsStart' | 'towardsEnd', string[]> {
  const piece = work.pieces.find((one) => one.id === id);
  const run = piece && styleRun(piece);
  const opening = run?.openings.find((one) => one.dart === dart);
  if (!run || !opening) return { towardsStart: [], towardsEnd: [] };
  const ids = (keep: (at: number) => boolean) =>
    run.notches.filter((notch) => keep(notch.at)).map((notch) => notch.id);
  return { towardsStart: ids((at) => at < opening.from), towardsEnd: ids((at) => at > opening.to) };
}

const finished = (hand: Hand): readonly Piece[] => piecesOf(hand.work.pieces, hand.fabric);

/** The width that a seam of these pieces has already, mm, where it is as good as the one asked for: its partner has to be like it. */
function seamWidth(pieces: readonly Piece[], asked: number, within: number): number {
  const had = pieces.flatMap((piece) =>
    seamGroups(piece)
      .filter(({ edges }) => SEWN.includes(edges[0]!.role))
      .map(({ id }) => piece.allowances[id] ?? NaN),
  );
  return had.find((width) => Math.abs(width - asked) <= within) ?? asked;
}
const SEWN: readonly EdgeRole[] = ['style-line', 'shoulder', 'side'];

/** Step 11: each edge the width the step asks for, corners lying flush, notches carried out. */
export const allowances: Worked = (hand) => {
  const spec = hand.rule.checks.find((one) => one.check === 'allowances');
  const numbers = spec?.numbers ?? {};
  const seam = seamWidth(finished(hand), numbers[hand.fabric] ?? 10, spec?.tolerances?.['width']?.value ?? 0);
  const width = (group: string): number => {
    if (/neckline|armhole/.test(group)) return numbers['curve'] ?? seam;
    return group === 'waist' ? (numbers['hemLeast'] ?? seam) : seam;
  };
  for (const piece of finished(hand)) {
    const groups = seamGroups(piece).map((group) => group.id);
    for (const group of groups) {
      // The back as drafted lies on the fold; halves that were trued each by itself are sewn to each other.
      const wide = group === 'centre-back' && baseId(piece.id) === 'back' ? 0 : width(group);
      hand.give({ do: 'allow', piece: piece.id, group, width: wide });
    }
    groups.forEach((before, i) => {
      const after = groups[(i + 1) % groups.length];
      if (after === undefined || (before === 'style-line') === (after === 'style-line')) return;
      hand.give({ do: 'corner', piece: piece.id, before, after, form: 'reflect', first: 'style-line' });
    });
    hand.give({ do: 'carry-notches', piece: piece.id });
  }
};

const NAMES: Readonly<Record<string, string>> = {
  upper: 'Upper front',
  lower: 'Lower front',
  back: 'Back',
  'back-left': 'Back, left half',
  'back-right': 'Back, right half',
};

/** Step 12: the label of each piece, and a grainline along the centre front of the part that was not turned. */
export const labelAndGrain: Worked = (hand) => {
  for (const piece of finished(hand)) {
    const name = piece.id.split('@')[0] ?? piece.id;
    // Only the back as drafted serves both halves, on the fold or as a pair; everything else is cut once, right side up.
    const pair = name === 'back';
    hand.give({
      do: 'label',
      piece: piece.id,
      name: NAMES[name] ?? name,
      cut: pair && !onFold(piece) ? 2 : 1,
      rightSideUp: !pair,
      ...(pair && onFold(piece) && { onFold: true }),
    });
    const kept = piece.parts.find((part) => part.grain === 'kept');
    const points = (kept?.edges ?? outlineOf(piece)).map((edge) => chainStart(edge.chain));
    const sum = points.reduce((s, p) => ({ x: s.x + p.x, y: s.y + p.y }), { x: 0, y: 0 });
    const middle = { x: sum.x / points.length, y: sum.y / points.length };
    hand.give({ do: 'grain', piece: piece.id, at: anchorInside(hand.work, piece.id, middle), angle: 0 });
  }
};

/** Step 13: every seam walked on the seam line, and what the walk shows. */
export const walkTheSeams: Worked = (hand) => {
  for (const seam of ['style-line', 'right/shoulder', 'left/shoulder', 'right/side', 'left/side']) {
    const sides = seamOf(hand.work.pieces, seam, hand.fabric);
    const eased = seam === 'style-line' && (sides?.a.eased !== undefined || sides?.b.eased !== undefined);
    const as = hand.fabric;
    hand.give({ do: 'walk', seam, along: 'seam', says: eased ? 'eased' : 'match', as });
  }
};
