import type { Box, Chain, Cubic, Place, Point, Segment } from './types.ts';
import { distance } from './point.ts';
import { hullBox, pointAt } from './segment.ts';
import { segmentLength } from './length.ts';
import { unitRoots } from './roots.ts';

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
  let t = 0;
  let point = s.a;
  let best = distance(p, s.a);
  for (const root of footParameters(s, p)) {
    const q = pointAt(s, root);
    const d = distance(p, q);
    if (d < best) {
      t = root;
      point = q;
      best = d;
    }
  }
  const end = distance(p, s.d);
  if (end < best) return { t: 1, point: s.d, distance: end };
  return { t, point, distance: best };
}

/** Where the line to p stands square on the cubic: roots of (P − p)·P', of fifth degree. */
function footParameters(s: Cubic, p: Point): number[] {
  const ax = s.a.x - p.x;
  const ay = s.a.y - p.y;
  const bx = s.b.x - p.x;
  const by = s.b.y - p.y;
  const cx = s.c.x - p.x;
  const cy = s.c.y - p.y;
  const dx = s.d.x - p.x;
  const dy = s.d.y - p.y;
  const ux = bx - ax;
  const uy = by - ay;
  const vx = cx - bx;
  const vy = cy - by;
  const wx = dx - cx;
  const wy = dy - cy;
  return unitRoots(
    [
      ax * ux + ay * uy,
      (2 * (ax * vx + ay * vy) + 3 * (bx * ux + by * uy)) / 5,
      (ax * wx + ay * wy + 6 * (bx * vx + by * vy) + 3 * (cx * ux + cy * uy)) / 10,
      (3 * (bx * wx + by * wy) + 6 * (cx * vx + cy * vy) + dx * ux + dy * uy) / 10,
      (3 * (cx * wx + cy * wy) + 2 * (dx * vx + dy * vy)) / 5,
      dx * wx + dy * wy,
    ],
    false,
  );
}

/** The place on a chain nearest to p, with its distance in mm; of several alike, the first. Throws RangeError when empty. */
export function nearestOnChain(c: Chain, p: Point): Place & { readonly distance: number } {
  if (c.length === 0) throw new RangeError('a chain needs at least one segment');
  let segment = 0;
  let best = nearestOnSegment(c[0]!, p);
  for (let i = 1; i < c.length; i++) {
    const s = c[i]!;
    if (boxDistance2(hullBox(s), p) >= best.distance * best.distance) continue;
    const near = nearestOnSegment(s, p);
    if (near.distance < best.distance) {
      best = near;
      segment = i;
    }
  }
  let length = segmentLength(c[segment]!, 0, best.t);
  for (let i = 0; i < segment; i++) length += segmentLength(c[i]!);
  return { segment, t: best.t, length, point: best.point, distance: best.distance };
}
