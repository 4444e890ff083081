import type { Isometry, Point } from './types.ts';
import { unit } from './point.ts';
import { cos, sin } from './trig.ts';

export const IDENTITY: Isometry = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

/** Moves everything by p (mm). */
export const translation = (p: Point): Isometry => ({ a: 1, b: 0, c: 0, d: 1, e: p.x, f: p.y });

/** Turns about `pivot` by the angle with cosine c and sine s (positive = clockwise on screen). c² + s² must be 1. */
export const rotationAbout = (pivot: Point, c: number, s: number): Isometry => ({
  a: c,
  b: s,
  c: -s,
  d: c,
  e: pivot.x - (c * pivot.x - s * pivot.y),
  f: pivot.y - (s * pivot.x + c * pivot.y),
});

/** Turns about `pivot` by an angle in radians (positive = clockwise on screen). */
export const rotationByAngle = (pivot: Point, radians: number): Isometry =>
  rotationAbout(pivot, cos(radians), sin(radians));

/**
 * Turns about `pivot` so that the direction pivot→from becomes pivot→to; needs no sine, as the angle comes from the two
 * legs. Throws RangeError when a leg has no length.
 */
export function rotationTaking(pivot: Point, from: Point, to: Point): Isometry {
  const ux = from.x - pivot.x;
  const uy = from.y - pivot.y;
  const vx = to.x - pivot.x;
  const vy = to.y - pivot.y;
  const turn = unit({ x: ux * vx + uy * vy, y: ux * vy - uy * vx });
  return rotationAbout(pivot, turn.x, turn.y);
}

/** Mirror image across the line through p and q. Throws RangeError when they are the same point. */
export function reflectionAcross(p: Point, q: Point): Isometry {
  const u = unit({ x: q.x - p.x, y: q.y - p.y });
  const a = u.x * u.x - u.y * u.y;
  const b = 2 * u.x * u.y;
  return { a, b, c: b, d: -a, e: p.x - (a * p.x + b * p.y), f: p.y - (b * p.x - a * p.y) };
}

/** First `inner`, then `outer`. */
export const compose = (outer: Isometry, inner: Isometry): Isometry => ({
  a: outer.a * inner.a + outer.c * inner.b,
  b: outer.b * inner.a + outer.d * inner.b,
  c: outer.a * inner.c + outer.c * inner.d,
  d: outer.b * inner.c + outer.d * inner.d,
  e: outer.a * inner.e + outer.c * inner.f + outer.e,
  f: outer.b * inner.e + outer.d * inner.f + outer.f,
});

/** The motion that undoes m: the transpose, since m keeps lengths. */
export const invert = (m: Isometry): Isometry => ({
  a: m.a,
  b: m.c,
  c: m.b,
  d: m.d,
  e: -(m.a * m.e + m.b * m.f),
  f: -(m.c * m.e + m.d * m.f),
});

/** Where m takes a point. */
export const applyTo = (m: Isometry, p: Point): Point => ({
  x: m.a * p.x + m.c * p.y + m.e,
  y: m.b * p.x + m.d * p.y + m.f,
});

/** Cosine and sine of the turn in m (for a reflection: of the turn that follows mirroring in the x axis). */
export const rotationOf = (m: Isometry): { readonly c: number; readonly s: number } => ({ c: m.a, s: m.b });

/** +1 for a rigid motion, −1 for a mirror image (to rounding). */
export const determinant = (m: Isometry): number => m.a * m.d - m.b * m.c;
