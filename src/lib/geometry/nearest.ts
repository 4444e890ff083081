import type { Box, Chain, Place, Point, Segment } from './types.ts';
import { distance } from './point.ts';
import { pointAt } from './segment.ts';
import { segmentLength } from './length.ts';
import { footParameter } from './foot.ts';

export interface Nearest {
  readonly t: number;
  readonly point: Point;
  /** mm */
  readonly distance: number;
}

/** Square of the distance from p to a box; 0 inside. */
export function boxDistance2(b: Box, p: Point): number {
  const x = p.x < b.minX ? b.minX - p.x : p.x > b.maxX ? p.x - b.maxX : 0;
  const y = p.y < b.minY ? b.minY - p.y : p.y > b.maxY ? p.y - b.maxY : 0;
  return x * x + y * y;
}

/** Square of the distance from p to the box of a segment's control points: never more than that to the segment. */
export function hullDistance2(s: Segment, p: Point): number {
  const { a, d } = s;
  let minX = a.x < d.x ? a.x : d.x;
  let maxX = a.x < d.x ? d.x : a.x;
  let minY = a.y < d.y ? a.y : d.y;
  let maxY = a.y < d.y ? d.y : a.y;
  if (s.kind === 'cubic') {
    const { b, c } = s;
    minX = Math.min(minX, b.x, c.x);
    maxX = Math.max(maxX, b.x, c.x);
    minY = Math.min(minY, b.y, c.y);
    maxY = Math.max(maxY, b.y, c.y);
  }
  const x = p.x < minX ? minX - p.x : p.x > maxX ? p.x - maxX : 0;
  const y = p.y < minY ? minY - p.y : p.y > maxY ? p.y - maxY : 0;
  return x * x + y * y;
}

/** The point of a segment nearest to p; of several alike, the first. */
export function nearestOnSegment(s: Segment, p: Point): Nearest {
  if (s.kind === 'line') {
    const x = s.d.x - s.a.x;
    const y = s.d.y - s.a.y;
    const n = x * x + y * y;
    const t = n > 0 ? Math.min(1, Math.max(0, ((p.x - s.a.x) * x + (p.y - s.a.y) * y) / n)) : 0;
    const point = pointAt(s, t);
    return { t, point, distance: distance(p, point) };
  }
  const t = footParameter(s, p);
  const point = pointAt(s, t);
  return { t, point, distance: distance(p, point) };
}

/** A foot on a chain: which segment, where on it, and how far (mm). */
export interface Foot extends Nearest {
  readonly segment: number;
}

/** The place on a chain nearest to p, without its length along the chain. Throws RangeError when empty. */
export function footOnChain(c: Chain, p: Point): Foot {
  if (c.length === 0) throw new RangeError('a chain needs at least one segment');
  let segment = 0;
  let best = nearestOnSegment(c[0]!, p);
  for (let i = 1; i < c.length; i++) {
    const s = c[i]!;
    if (hullDistance2(s, p) >= best.distance * best.distance) continue;
    const near = nearestOnSegment(s, p);
    if (near.distance < best.distance) {
      best = near;
      segment = i;
    }
  }
  return { segment, t: best.t, point: best.point, distance: best.distance };
}

/** The place on a chain nearest to p, with its distance in mm; of several alike, the first. Throws RangeError when empty. */
export function nearestOnChain(c: Chain, p: Point): Place & { readonly distance: number } {
  const { segment, t, point, distance } = footOnChain(c, p);
  let length = segmentLength(c[segment]!, 0, t);
  for (let i = 0; i < segment; i++) length += segmentLength(c[i]!);
  return { segment, t, length, point, distance };
}
