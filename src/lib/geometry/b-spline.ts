import type { Cubic, Point } from './types.ts';
import { cubic } from './segment.ts';

/*
 * Uniform cubic B-splines with held ends: knots 0, 1, ... `spans`, the first and the last one fourfold; `spans` + 3 control
 * points, of which the first and the last lie on the curve. Source: de Boor, A Practical Guide to Splines, ch. IX and X.
 */

/** The first control point that counts at a parameter, and the values there of the basis functions of the four that do, with their derivatives. */
export interface Basis {
  readonly first: number;
  readonly value: readonly number[];
  readonly slope: readonly number[];
}

/** The basis at u, from 0 to `spans`. */
export function basisAt(u: number, spans: number): Basis {
  const first = Math.max(0, Math.min(spans - 1, Math.floor(u)));
  // The knots round the span, as far as the ends let them be apart.
  const [l2, l1, l0] = [Math.max(0, first - 2), Math.max(0, first - 1), first];
  const [r0, r1, r2] = [first + 1, Math.min(spans, first + 2), Math.min(spans, first + 3)];
  const x = u - l0;
  const y = r0 - u;
  // de Boor's recurrence written out: two straight pieces, three quadratic ones, four cubic ones.
  const a = y / (r0 - l1);
  const b = x / (r1 - l0);
  const q0 = y * a;
  const q1 = (u - l1) * a + (r1 - u) * b;
  const q2 = x * b;
  const c0 = q0 / (r0 - l2);
  const c1 = q1 / (r1 - l1);
  const c2 = q2 / (r2 - l0);
  return {
    first,
    value: [y * c0, (u - l2) * c0 + (r1 - u) * c1, (u - l1) * c1 + (r2 - u) * c2, x * c2],
    slope: [-3 * c0, 3 * (c0 - c1), 3 * (c1 - c2), 3 * c2],
  };
}

/** The sum of control points in proportion to the values (or slopes) of the basis. */
export function blend(control: readonly Point[], first: number, by: readonly number[]): Point {
  const [p, q, r, s] = [control[first]!, control[first + 1]!, control[first + 2]!, control[first + 3]!];
  const [a, b, c, d] = by as [number, number, number, number];
  return { x: a * p.x + b * q.x + c * r.x + d * s.x, y: a * p.y + b * q.y + c * r.y + d * s.y };
}

/** The spline as one Bézier cubic a span, each starting bit for bit where the one before it ends. */
export function cubicsOf(control: readonly Point[]): readonly Cubic[] {
  const spans = control.length - 3;
  const knots = Array.from({ length: spans + 1 }, (_, i) => {
    const { first, value, slope } = basisAt(i, spans);
    const end = i === 0 ? control[0] : i === spans ? control[spans + 2] : undefined;
    return { at: end ?? blend(control, first, value), way: blend(control, first, slope) };
  });
  return Array.from({ length: spans }, (_, i) => {
    const { at: a, way: v } = knots[i]!;
    const { at: d, way: w } = knots[i + 1]!;
    return cubic(a, { x: a.x + v.x / 3, y: a.y + v.y / 3 }, { x: d.x - w.x / 3, y: d.y - w.y / 3 }, d);
  });
}
