import type { Chain, Point, Segment } from './types.ts';
import { distance } from './point.ts';
import { cubic, line } from './segment.ts';

/**
 * The interpolating cubic spline through the points in order: C2 in its parameter, which is chord length, with natural
 * ends (no curvature there). Neighbours less than 1e-9 mm apart count once; two points give one line. Throws RangeError
 * for fewer than two different points.
 * Source: de Boor, A Practical Guide to Splines, ch. IV (the tridiagonal system for the slopes).
 */
export function splineThrough(points: readonly Point[]): Chain {
  const p: Point[] = [];
  const h: number[] = [];
  for (const q of points) {
    const gap = p.length === 0 ? Infinity : distance(p[p.length - 1]!, q);
    if (gap <= 1e-9) continue;
    if (p.length > 0) h.push(gap);
    p.push(q);
  }
  const n = p.length - 1;
  if (n < 1) throw new RangeError('a spline needs two different points');
  if (n === 1) return [line(p[0]!, p[1]!)];
  const vx = slopes(
    p.map((q) => q.x),
    h,
  );
  const vy = slopes(
    p.map((q) => q.y),
    h,
  );
  const out: Segment[] = [];
  for (let i = 0; i < n; i++) {
    const a = p[i]!;
    const d = p[i + 1]!;
    const k = h[i]! / 3;
    out.push(
      cubic(
        a,
        { x: a.x + vx[i]! * k, y: a.y + vy[i]! * k },
        { x: d.x - vx[i + 1]! * k, y: d.y - vy[i + 1]! * k },
        d,
      ),
    );
  }
  return out;
}

/** Slopes at the knots of the natural spline through v with knot spacing h. */
function slopes(v: readonly number[], h: readonly number[]): number[] {
  const n = h.length;
  const diagonal: number[] = [2];
  const right: number[] = [(3 * (v[1]! - v[0]!)) / h[0]!];
  // upper[i] is the coefficient of the slope at i + 1 in row i; elimination runs along with the setting up.
  const upper: number[] = [1];
  for (let i = 1; i <= n; i++) {
    const last = i === n;
    const lower = last ? 1 : h[i]!;
    const main = last ? 2 : 2 * (h[i - 1]! + h[i]!);
    const value = last
      ? (3 * (v[n]! - v[n - 1]!)) / h[n - 1]!
      : 3 * ((h[i]! * (v[i]! - v[i - 1]!)) / h[i - 1]! + (h[i - 1]! * (v[i + 1]! - v[i]!)) / h[i]!);
    const k = lower / diagonal[i - 1]!;
    diagonal.push(main - k * upper[i - 1]!);
    right.push(value - k * right[i - 1]!);
    upper.push(last ? 0 : h[i - 1]!);
  }
  const out: number[] = right;
  out[n] = right[n]! / diagonal[n]!;
  for (let i = n - 1; i >= 0; i--) out[i] = (right[i]! - upper[i]! * out[i + 1]!) / diagonal[i]!;
  return out;
}
