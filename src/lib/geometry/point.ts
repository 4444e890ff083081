import type { Point } from './types.ts';

/** p + q. */
export const add = (p: Point, q: Point): Point => ({ x: p.x + q.x, y: p.y + q.y });

/** p − q: the vector from q to p. */
export const sub = (p: Point, q: Point): Point => ({ x: p.x - q.x, y: p.y - q.y });

/** k·p. */
export const scale = (p: Point, k: number): Point => ({ x: p.x * k, y: p.y * k });

/** Inner product in mm². */
export const dot = (p: Point, q: Point): number => p.x * q.x + p.y * q.y;

/** z of the outer product in mm²; positive when q lies clockwise from p on the screen (y is down). */
export const cross = (p: Point, q: Point): number => p.x * q.y - p.y * q.x;

/** Length of a vector in mm. (Not Math.hypot, which engines round differently.) */
export const norm = (p: Point): number => Math.sqrt(p.x * p.x + p.y * p.y);

/** Distance between two points in mm. */
export function distance(p: Point, q: Point): number {
  const x = p.x - q.x;
  const y = p.y - q.y;
  return Math.sqrt(x * x + y * y);
}

/** The point at fraction t from p to q; exactly p at 0 and exactly q at 1. */
export const lerp = (p: Point, q: Point, t: number): Point =>
  t === 1 ? q : { x: p.x + (q.x - p.x) * t, y: p.y + (q.y - p.y) * t };

/** Unit vector along p. Throws RangeError when p has no direction. */
export function unit(p: Point): Point {
  const n = norm(p);
  if (!(n > 0)) throw new RangeError('a vector of no length has no direction');
  return { x: p.x / n, y: p.y / n };
}

/** p turned a quarter clockwise on the screen: (x, y) -> (−y, x). */
export const perpendicular = (p: Point): Point => ({ x: -p.y, y: p.x });

/** Whether two points are the same to the last bit (+0 and −0 count as the same). */
export const samePoint = (p: Point, q: Point): boolean => p === q || (p.x === q.x && p.y === q.y);
