import type { Point } from './types.ts';

/**
 * Mean value coordinates of p over a polygon (any simple one, either direction): one weight a corner, summing to 1, with
 * Σ weight·corner = p. Exact at corners and along edges. The half-angle tangents need square roots only.
 * Throws RangeError for fewer than three corners, or when p lies where the weights have no finite sum.
 * Source: Floater, Mean value coordinates, 2003; Hormann & Floater, Mean value coordinates for arbitrary planar polygons,
 * 2006 (signed angles, so that polygons need not be convex).
 */
export function meanValueWeights(polygon: readonly Point[], p: Point): number[] {
  const n = polygon.length;
  if (n < 3) throw new RangeError('mean value coordinates need three corners or more');
  const weights = new Array<number>(n).fill(0);
  const r: number[] = [];
  for (let i = 0; i < n; i++) {
    const x = polygon[i]!.x - p.x;
    const y = polygon[i]!.y - p.y;
    r.push(Math.sqrt(x * x + y * y));
    if (r[i] === 0) {
      weights[i] = 1;
      return weights;
    }
  }
  for (let i = 0; i < n; i++) {
    const j = i + 1 === n ? 0 : i + 1;
    const ux = polygon[i]!.x - p.x;
    const uy = polygon[i]!.y - p.y;
    const vx = polygon[j]!.x - p.x;
    const vy = polygon[j]!.y - p.y;
    const product = r[i]! * r[j]!;
    const sine = ux * vy - uy * vx;
    const cosine = ux * vx + uy * vy;
    if (Math.abs(sine) <= 1e-14 * product && cosine < 0) {
      weights.fill(0);
      const sum = r[i]! + r[j]!;
      weights[i] = r[j]! / sum;
      weights[j] = r[i]! / sum;
      return weights;
    }
    // tan(α/2), by whichever form does not cancel.
    const half = cosine > 0 ? sine / (product + cosine) : (product - cosine) / sine;
    weights[i]! += half / r[i]!;
    weights[j]! += half / r[j]!;
  }
  let sum = 0;
  for (const w of weights) sum += w;
  if (!(Math.abs(sum) > 0) || sum - sum !== 0)
    throw new RangeError('no mean value coordinates at this point');
  for (let i = 0; i < n; i++) weights[i]! /= sum;
  return weights;
}

/** Σ weight·point. Throws RangeError when the counts differ. */
export function fromWeights(points: readonly Point[], weights: readonly number[]): Point {
  if (points.length !== weights.length) throw new RangeError('one weight is needed for each point');
  let x = 0;
  let y = 0;
  for (let i = 0; i < points.length; i++) {
    x += weights[i]! * points[i]!.x;
    y += weights[i]! * points[i]!.y;
  }
  return { x, y };
}
