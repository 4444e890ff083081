import type { Point, Segment } from './types.ts';
import type { Offset, OffsetEdge } from './offset-types.ts';
import { applyTo, reflectionAcross } from './isometry.ts';
import { lineMeets } from './offset-crossing.ts';
import { nearestOnChain } from './nearest.ts';
import { between, pointAt, reverse, tangentAt } from './segment.ts';

const SAMPLES = 16;

/**
 * How far, in mm, the end of an allowance is from lying flush when its seam is sewn first and pressed open: the end is folded
 * over in the first edge's seam line (its tangent at the corner), and the largest distance from the other edge's cut line is
 * taken. 0 for a reflected end, and for any end at a square corner. `corner` is the index of the edge before the corner.
 * Undefined where there is no such end: at an inward corner, or where the cut lines there were swallowed.
 */
export function flushError(
  edges: readonly OffsetEdge[],
  made: Offset,
  corner: number,
  first: 'before' | 'after',
): number | undefined {
  const next = (corner + 1) % edges.length;
  const edge = edges[first === 'before' ? corner : next]!;
  const other = first === 'before' ? next : corner;
  const last = edge.chain[first === 'before' ? edge.chain.length - 1 : 0];
  if (!last || made.edges[other]!.length === 0) return undefined;
  if (edge.width === 0) return 0;
  const seam = first === 'before' ? last.d : last.a;
  const t = tangentAt(last, first === 'before' ? 1 : 0);
  // From the first edge's cut line outwards along the end, and on along the other's cut line.
  const path: Segment[] =
    first === 'before'
      ? [...made.corners[corner]!, ...made.edges[other]!]
      : [...made.edges[other]!, ...made.corners[corner]!].map(reverse).reverse();
  const meets = lineMeets(path, false, seam, t);
  if (!meets) return undefined;
  const end = path.slice(0, meets.segment);
  const neighbour = path.slice(meets.segment + 1);
  const shared = path[meets.segment]!;
  if (meets.t > 0) end.push(between(shared, 0, meets.t));
  if (meets.t < 1) neighbour.unshift(between(shared, meets.t, 1));
  if (neighbour.length === 0) return undefined;
  const fold = reflectionAcross(seam, { x: seam.x + t.x, y: seam.y + t.y });
  let most = 0;
  for (const s of end) {
    for (let i = 0; i <= SAMPLES; i++) {
      const p = pointAt(s, i / SAMPLES);
      // What runs along the first edge's own cut line is not its end.
      if (height(p, seam, t) > edge.width - 1e-6) continue;
      most = Math.max(most, nearestOnChain(neighbour, applyTo(fold, p)).distance);
    }
  }
  // The tip, which the samples leave out by its height.
  const tip = end[0];
  if (tip && height(tip.a, seam, t) < edge.width + 1e-6) {
    const start = end.find((s) => height(s.d, seam, t) < edge.width - 1e-6);
    if (start) most = Math.max(most, nearestOnChain(neighbour, applyTo(fold, start.a)).distance);
  }
  return most;
}

/** Distance of p outside the seam line through `seam` along the unit tangent t of travel, mm. */
const height = (p: Point, seam: Point, t: Point): number => (p.x - seam.x) * t.y - (p.y - seam.y) * t.x;
