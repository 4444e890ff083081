import type { Point } from '../geometry/types.ts';
import type { EdgeRole, Fold, Piece } from './types.ts';
import { cross, distance, sub, unit } from '../geometry/point.ts';
import { besideMouth, mouthOf } from './mouth.ts';
import { landmark } from './outline.ts';

/** How much of the mouth's width must lie in a direction for one of its legs to be the one on that side (ours). */
const CLEAR = 0.15;

/**
 * Whether a dart folded that way lies on the leg at its start: on the one that is nearer to centre front, or further down along it.
 * Undefined when the mouth hardly runs in that direction.
 */
export function foldsOnStart(piece: Piece, ends: readonly [Point, Point], fold: Fold): boolean | undefined {
  const run = mouthRun(piece, ends);
  const more = fold === 'centre' || fold === 'side' ? run.outwards : run.downwards;
  if (Math.abs(more) < CLEAR * distance(ends[0], ends[1])) return undefined;
  return more > 0 === (fold === 'side' || fold === 'down');
}

/**
 * By how much, mm, the start of a mouth lies further from centre front than its end, and further down along it. A piece without centre
 * front is taken to hang as it lies.
 */
function mouthRun(
  piece: Piece,
  [start, end]: readonly [Point, Point],
): { readonly outwards: number; readonly downwards: number } {
  const neck = landmark(piece, 'neck-centre');
  const waist = landmark(piece, 'waist-centre');
  const both = neck !== undefined && waist !== undefined;
  const down = both ? unit(sub(waist, neck)) : { x: 0, y: 1 };
  const from = neck ?? waist ?? { x: 0, y: 0 };
  const outwards = (p: Point): number => Math.abs(cross(down, sub(p, from)));
  const downwards = (p: Point): number => down.x * (p.x - from.x) + down.y * (p.y - from.y);
  return { outwards: outwards(start) - outwards(end), downwards: downwards(start) - downwards(end) };
}

/** Edges from which darts run up or down, and edges from which they lie across. */
const UPRIGHT: readonly EdgeRole[] = ['shoulder', 'neckline', 'waist'];
const ACROSS: readonly EdgeRole[] = ['armhole', 'side', 'centre-front'];

/**
 * The ways in which a dart is folded at the edge where it opens, the usual one first: one that runs up or down to centre front, one that
 * lies across down (read: Erwin p. 42). From any other edge it goes by how its mouth runs. Empty for a dart that is not open. `capDart`
 * takes whatever the mouth lets lie clearly in a direction, so that what was made before stays.
 */
export function foldsOf(piece: Piece, dartId: string): readonly Fold[] {
  const found = mouthOf(piece, dartId);
  if ('refused' in found) return [];
  const ends = [found.ok.start, found.ok.end] as const;
  const clear = (fold: Fold): boolean => foldsOnStart(piece, ends, fold) !== undefined;
  const upright = (['centre', 'side'] as const).filter(clear);
  const across = (['down', 'up'] as const).filter(clear);
  const run = mouthRun(piece, ends);
  const { role } = besideMouth(found.ok)[0];
  const hangs =
    UPRIGHT.includes(role) || (!ACROSS.includes(role) && Math.abs(run.outwards) > Math.abs(run.downwards));
  const [own, other] = hangs ? [upright, across] : [across, upright];
  return own.length > 0 ? own : other;
}
