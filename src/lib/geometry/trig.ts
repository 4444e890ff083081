import type { Point } from './types.ts';

/*
 * Sine, cosine and arc tangent from + − * / alone, so that every engine gives the same bits: Math.sin and its kin may
 * differ in the last place. Taylor series after reduction; the tables were made with mpmath at 40 digits.
 */

export const PI = 3.141592653589793;
export const TAU = 6.283185307179586;

export const degrees = (radians: number): number => (radians * 180) / PI;
export const radians = (degrees: number): number => (degrees * PI) / 180;

// π/2 in three parts of 33 bits, so that a whole multiple of the first two is exact for angles up to about 10⁶.
const QUARTER_1 = 1.5707963267341256;
const QUARTER_2 = 6.077100506303966e-11;
const QUARTER_3 = 2.0222662487959506e-21;

/** Sine of r, |r| ≤ π/4. */
function sinNear(r: number): number {
  const z = r * r;
  const tail =
    z *
    (-1 / 6 +
      z *
        (1 / 120 +
          z *
            (-1 / 5040 +
              z *
                (1 / 362880 +
                  z *
                    (-1 / 39916800 +
                      z * (1 / 6227020800 + z * (-1 / 1307674368000 + z / 355687428096000)))))));
  return r + r * tail;
}

/** Cosine of r, |r| ≤ π/4. */
function cosNear(r: number): number {
  const z = r * r;
  const tail =
    z *
    z *
    (1 / 24 +
      z *
        (-1 / 720 +
          z *
            (1 / 40320 +
              z * (-1 / 3628800 + z * (1 / 479001600 + z * (-1 / 87178291200 + z / 20922789888000))))));
  const half = 0.5 * z;
  const w = 1 - half;
  return w + (1 - w - half + tail);
}

/** sin(x + quarters·π/2), x in radians. */
function wave(x: number, quarters: number): number {
  const k = Math.floor(x * (2 / PI) + 0.5);
  const r = x - k * QUARTER_1 - k * QUARTER_2 - k * QUARTER_3;
  const n = k + quarters;
  const quadrant = n - 4 * Math.floor(n / 4);
  if (quadrant === 0) return sinNear(r);
  if (quadrant === 1) return cosNear(r);
  if (quadrant === 2) return -sinNear(r);
  return -cosNear(r);
}

/** Sine of an angle in radians, right to about 1e-16 up to 10⁶ radians. */
export const sin = (x: number): number => wave(x, 0);

/** Cosine of an angle in radians, right to about 1e-16 up to 10⁶ radians. */
export const cos = (x: number): number => wave(x, 1);

/** atan(k/8), k = 0..8, and what the double leaves out. */
const ATAN_EIGHTHS = [
  0, 0.12435499454676144, 0.24497866312686414, 0.35877067027057225, 0.4636476090008061, 0.5585993153435624,
  0.6435011087932844, 0.7188299996216245, 0.7853981633974483,
];
const ATAN_REST = [
  0, -3.1253241424539383e-18, 1.0698755618734451e-17, -2.4623815582638635e-17, 2.2698777452961687e-17,
  -5.4556305485916264e-18, 1.5834785051444286e-17, -2.1478388444456983e-17, 3.061616997868383e-17,
];

/** Arc tangent of y/x for 0 ≤ y ≤ x, x > 0. */
function atanOctant(y: number, x: number): number {
  const k = Math.floor((8 * y) / x + 0.5);
  const q = k / 8;
  const t = k === 0 ? y / x : (y - q * x) / (x + q * y);
  const z = t * t;
  const tail =
    z * (-1 / 3 + z * (1 / 5 + z * (-1 / 7 + z * (1 / 9 + z * (-1 / 11 + z * (1 / 13 - z / 15))))));
  return ATAN_EIGHTHS[k]! + (t + (t * tail + ATAN_REST[k]!));
}

/** Angle of the vector (x, y) in (−π, π], radians; 0 for the zero vector. */
export function atan2(y: number, x: number): number {
  const ax = Math.abs(x);
  const ay = Math.abs(y);
  if (ax === 0 && ay === 0) return 0;
  let angle = ay <= ax ? atanOctant(ay, ax) : PI / 2 - (atanOctant(ax, ay) - 6.123233995736766e-17);
  if (x < 0) angle = PI - (angle - 1.2246467991473532e-16);
  return y < 0 ? -angle : angle;
}

/** Arc cosine in [0, π]; NaN outside −1..1. */
export const acos = (v: number): number => atan2(Math.sqrt((1 - v) * (1 + v)), v);

/** Arc sine in [−π/2, π/2]; NaN outside −1..1. */
export const asin = (v: number): number => atan2(v, Math.sqrt((1 - v) * (1 + v)));

/** Signed angle from u to v in (−π, π], radians; positive is clockwise on the screen (y is down). */
export const angleBetween = (u: Point, v: Point): number =>
  atan2(u.x * v.y - u.y * v.x, u.x * v.x + u.y * v.y);
