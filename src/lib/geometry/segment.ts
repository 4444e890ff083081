import type { Box, Cubic, Isometry, Line, Point, Segment } from './types.ts';
import { lerp } from './point.ts';
import { applyTo } from './isometry.ts';

/** The straight segment from a to d. */
export const line = (a: Point, d: Point): Line => ({ kind: 'line', a, d });

/** The cubic Bézier segment from a to d with control points b and c. */
export const cubic = (a: Point, b: Point, c: Point, d: Point): Cubic => ({ kind: 'cubic', a, b, c, d });

export const startOf = (s: Segment): Point => s.a;
export const endOf = (s: Segment): Point => s.d;

/** The point at parameter t; exactly the end points at 0 and 1. */
export function pointAt(s: Segment, t: number): Point {
  if (t === 0) return s.a;
  if (t === 1) return s.d;
  if (s.kind === 'line') return lerp(s.a, s.d, t);
  const r = 1 - t;
  const a = r * r * r;
  const b = 3 * r * r * t;
  const c = 3 * r * t * t;
  const d = t * t * t;
  return {
    x: a * s.a.x + b * s.b.x + c * s.c.x + d * s.d.x,
    y: a * s.a.y + b * s.b.y + c * s.c.y + d * s.d.y,
  };
}

/** The derivative by t, in mm for a unit of t. */
export function derivativeAt(s: Segment, t: number): Point {
  if (s.kind === 'line') return { x: s.d.x - s.a.x, y: s.d.y - s.a.y };
  const r = 1 - t;
  const a = 3 * r * r;
  const b = 6 * r * t;
  const c = 3 * t * t;
  return {
    x: a * (s.b.x - s.a.x) + b * (s.c.x - s.b.x) + c * (s.d.x - s.c.x),
    y: a * (s.b.y - s.a.y) + b * (s.c.y - s.b.y) + c * (s.d.y - s.c.y),
  };
}

/**
 * Unit tangent in the direction of travel. Where a control point lies on an end the derivative is zero there and the
 * next control point shows the way. Throws RangeError when the whole segment is one point.
 */
export function tangentAt(s: Segment, t: number): Point {
  const v = derivativeAt(s, t);
  const n = Math.sqrt(v.x * v.x + v.y * v.y);
  if (s.kind === 'line') {
    if (n > 0) return { x: v.x / n, y: v.y / n };
  } else {
    const size =
      Math.abs(s.d.x - s.a.x) + Math.abs(s.d.y - s.a.y) + Math.abs(s.b.x - s.a.x) + Math.abs(s.c.y - s.a.y);
    if (n > 1e-9 * size) return { x: v.x / n, y: v.y / n };
    // From t look ahead to the end of what is left; at the end, look back.
    const rest = t < 1 ? between(s, t, 1) : reverse(s);
    const sign = t < 1 ? 1 : -1;
    for (const q of rest.kind === 'cubic' ? [rest.b, rest.c, rest.d] : [rest.d]) {
      const x = q.x - rest.a.x;
      const y = q.y - rest.a.y;
      const m = Math.sqrt(x * x + y * y);
      if (m > 1e-9 * size) return { x: (sign * x) / m, y: (sign * y) / m };
    }
  }
  throw new RangeError('a segment of no length has no tangent');
}

/** Cuts at parameter t (de Casteljau). Both halves hold the very same joint point. */
export function splitAt(s: Segment, t: number): [Segment, Segment] {
  if (s.kind === 'line') {
    const p = pointAt(s, t);
    return [line(s.a, p), line(p, s.d)];
  }
  const ab = lerp(s.a, s.b, t);
  const bc = lerp(s.b, s.c, t);
  const cd = lerp(s.c, s.d, t);
  const abc = lerp(ab, bc, t);
  const bcd = lerp(bc, cd, t);
  const p = pointAt(s, t);
  return [cubic(s.a, ab, abc, p), cubic(p, bcd, cd, s.d)];
}

/** The part from t0 to t1 (t0 < t1), whose ends are exactly pointAt(t0) and pointAt(t1). */
export function between(s: Segment, t0: number, t1: number): Segment {
  if (t0 === 0 && t1 === 1) return s;
  const a = pointAt(s, t0);
  const d = pointAt(s, t1);
  if (s.kind === 'line') return line(a, d);
  const v = derivativeAt(s, t0);
  const w = derivativeAt(s, t1);
  const k = (t1 - t0) / 3;
  return cubic(a, { x: a.x + v.x * k, y: a.y + v.y * k }, { x: d.x - w.x * k, y: d.y - w.y * k }, d);
}

/** The same segment run the other way. */
export const reverse = (s: Segment): Segment =>
  s.kind === 'line' ? line(s.d, s.a) : cubic(s.d, s.c, s.b, s.a);

/** The segment moved by m; equal points go to equal points, bit for bit. */
export const transform = (s: Segment, m: Isometry): Segment =>
  s.kind === 'line'
    ? line(applyTo(m, s.a), applyTo(m, s.d))
    : cubic(applyTo(m, s.a), applyTo(m, s.b), applyTo(m, s.c), applyTo(m, s.d));

/** The box of the control points: quick to get, and never smaller than the segment. */
export function hullBox(s: Segment): Box {
  const { a, d } = s;
  if (s.kind === 'line') {
    return {
      minX: a.x < d.x ? a.x : d.x,
      minY: a.y < d.y ? a.y : d.y,
      maxX: a.x < d.x ? d.x : a.x,
      maxY: a.y < d.y ? d.y : a.y,
    };
  }
  const { b, c } = s;
  return {
    minX: Math.min(a.x, b.x, c.x, d.x),
    minY: Math.min(a.y, b.y, c.y, d.y),
    maxX: Math.max(a.x, b.x, c.x, d.x),
    maxY: Math.max(a.y, b.y, c.y, d.y),
  };
}

/** The smallest upright box around the segment, from the roots of the derivative. */
export function bounds(s: Segment): Box {
  if (s.kind === 'line') return hullBox(s);
  const [minX, maxX] = range(s.a.x, s.b.x, s.c.x, s.d.x);
  const [minY, maxY] = range(s.a.y, s.b.y, s.c.y, s.d.y);
  return { minX, minY, maxX, maxY };
}

/** Least and greatest value of a cubic in Bernstein form on [0, 1]. */
function range(a: number, b: number, c: number, d: number): [number, number] {
  let low = Math.min(a, d);
  let high = Math.max(a, d);
  if (b >= low && b <= high && c >= low && c <= high) return [low, high];
  const p = d - a + 3 * (b - c);
  const q = 2 * (a - 2 * b + c);
  const r = b - a;
  const root = Math.sqrt(Math.max(0, q * q - 4 * p * r));
  const h = -0.5 * (q + (q < 0 ? -root : root));
  for (const t of [h / p, r / h]) {
    if (!(t > 0 && t < 1)) continue;
    const u = 1 - t;
    const v = u * u * (u * a + 3 * t * b) + t * t * (3 * u * c + t * d);
    if (v < low) low = v;
    if (v > high) high = v;
  }
  return [low, high];
}

/**
 * Whether s and the segment u that starts where s ends both advance in one direction all the way: then that joint is all
 * they share. False proves nothing.
 */
export function leadsOn(s: Segment, u: Segment): boolean {
  const ex = s.d.x - s.a.x;
  const ey = s.d.y - s.a.y;
  const fx = u.d.x - u.a.x;
  const fy = u.d.y - u.a.y;
  const e = Math.sqrt(ex * ex + ey * ey);
  const f = Math.sqrt(fx * fx + fy * fy);
  if (!(e > 0 && f > 0)) return false;
  const wx = ex / e + fx / f;
  const wy = ey / e + fy / f;
  // (Folded back by less than a thousandth: rounding could say anything.)
  return wx * wx + wy * wy > 1e-6 && advances(s, wx, wy) && advances(u, wx, wy);
}

function advances(s: Segment, wx: number, wy: number): boolean {
  if (s.kind === 'line') return wx * (s.d.x - s.a.x) + wy * (s.d.y - s.a.y) > 0;
  return (
    wx * (s.b.x - s.a.x) + wy * (s.b.y - s.a.y) > 0 &&
    wx * (s.c.x - s.b.x) + wy * (s.c.y - s.b.y) > 0 &&
    wx * (s.d.x - s.c.x) + wy * (s.d.y - s.c.y) > 0
  );
}
