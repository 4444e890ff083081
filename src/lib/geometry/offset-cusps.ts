import type { Cubic } from './types.ts';

/**
 * The seam cubic in hand as polynomials, p = ((ax·t + bx)·t + cx)·t + dx and likewise for y, and the width of its allowance: ax, bx,
 * cx, dx, ay, by, cy, dy, width. Set by setSeam, read while its parallel is fitted. (An array, because engines box numbers kept in
 * module variables.)
 */
export const seam = new Float64Array(9);

/** Takes a cubic and the width of its allowance (mm) in hand. */
export function setSeam({ a, b, c, d }: Cubic, width: number): void {
  seam[0] = d.x - a.x + 3 * (b.x - c.x);
  seam[1] = 3 * (a.x - 2 * b.x + c.x);
  seam[2] = 3 * (b.x - a.x);
  seam[3] = a.x;
  seam[4] = d.y - a.y + 3 * (b.y - c.y);
  seam[5] = 3 * (a.y - 2 * b.y + c.y);
  seam[6] = 3 * (b.y - a.y);
  seam[7] = a.y;
  seam[8] = width;
}

/** |p'|³ + width·(p' × p''): its sign is that of the parallel's speed, (1 + κ·width)·|p'|. */
export function cuspFunction(t: number): number {
  const ax = seam[0]!;
  const bx = seam[1]!;
  const cx = seam[2]!;
  const ay = seam[4]!;
  const by = seam[5]!;
  const cy = seam[6]!;
  const width = seam[8]!;
  const vx = (3 * ax * t + 2 * bx) * t + cx;
  const vy = (3 * ay * t + 2 * by) * t + cy;
  const v2 = vx * vx + vy * vy;
  return v2 * Math.sqrt(v2) + width * (vx * (6 * ay * t + 2 * by) - vy * (6 * ax * t + 2 * bx));
}

/** A guess of a root is trusted to tell the sides of itself no nearer than this. */
const GUESS = 1e-11;

/**
 * Root of the cusp function between two parameters where its sign differs, by halving. Where a root lies is guessed by false
 * position first (Illinois; Dowell & Jarratt, 1971), so that the function is asked only in the last few halvings: the answer is the
 * same.
 */
function cuspBetween(low: number, high: number, atLow: number, atHigh: number): number {
  const sign = atLow > 0;
  let a = low;
  let b = high;
  let fa = atLow;
  let fb = atHigh;
  let guess = NaN;
  for (let i = 0; i < 20; i++) {
    const t = b - (fb * (b - a)) / (fb - fa);
    if (!(t > a && t < b) && !(t > b && t < a)) break;
    const f = cuspFunction(t);
    const moved = Math.abs(t - b);
    if (f > 0 === fb > 0) fa *= 0.5;
    else {
      a = b;
      fa = fb;
    }
    b = t;
    fb = f;
    if (moved < 1e-13 || f === 0) {
      guess = t;
      break;
    }
  }
  for (let i = 0; i < 60 && high - low > 1e-15; i++) {
    const mid = 0.5 * (low + high);
    const before = mid < guess - GUESS || (!(mid > guess + GUESS) && cuspFunction(mid) > 0 === sign);
    if (before) low = mid;
    else high = mid;
  }
  return 0.5 * (low + high);
}

/** Places the cusp function is looked at between, and its values there (used within one search only). */
const STEPS = 24;
const cuspValues = new Float64Array(STEPS + 1);

/** Parameters of the cusps, ascending. Most curves are told at once to have none. */
export function cusps(): number[] {
  const ax = seam[0]!;
  const bx = seam[1]!;
  const cx = seam[2]!;
  const ay = seam[4]!;
  const by = seam[5]!;
  const cy = seam[6]!;
  const width = seam[8]!;
  // p' × p'' is a quadratic in t; nowhere below −least.
  const g0 = 2 * (cx * by - cy * bx);
  const g1 = 6 * (cx * ay - cy * ax);
  const g2 = 6 * (bx * ay - by * ax);
  // Bernstein coefficients of the quadratic bound it from below.
  const least = Math.min(g0, g0 + 0.5 * g1, g0 + g1 + g2);
  if (least >= 0 || width === 0) return [];
  // A lower bound of |p'|: the smallest of its control vectors, taken along the chord.
  const ex = ax + bx + cx;
  const ey = ay + by + cy;
  const e = Math.sqrt(ex * ex + ey * ey);
  const slow =
    Math.min(
      cx * ex + cy * ey,
      (cx + bx) * ex + (cy + by) * ey,
      (cx + 2 * bx + 3 * ax) * ex + (cy + 2 * by + 3 * ay) * ey,
    ) / e;
  if (slow > 0 && slow * slow * slow + width * least > 0) return [];
  const n = STEPS;
  const f = cuspValues;
  for (let i = 0; i <= n; i++) f[i] = cuspFunction(i / n);
  const out: number[] = [];
  for (let i = 0; i < n; i++) {
    if (f[i]! > 0 !== f[i + 1]! > 0) out.push(cuspBetween(i / n, (i + 1) / n, f[i]!, f[i + 1]!));
    else if (i > 0 && f[i]! > 0 && f[i]! <= f[i - 1]! && f[i]! <= f[i + 1]!) {
      const t = lowest((i - 1) / n, i / n, (i + 1) / n);
      const g = cuspFunction(t);
      if (g <= 0)
        out.push(cuspBetween((i - 1) / n, t, f[i - 1]!, g), cuspBetween(t, (i + 1) / n, g, f[i + 1]!));
    }
  }
  return out;
}

/** Place of a minimum of the cusp function bracketed by three parameters (golden section). */
function lowest(low: number, mid: number, high: number): number {
  const golden = 0.3819660112501051;
  let value = cuspFunction(mid);
  for (let i = 0; i < 24 && value > 0; i++) {
    const t = high - mid > mid - low ? mid + golden * (high - mid) : mid - golden * (mid - low);
    const v = cuspFunction(t);
    if (v < value) {
      if (t > mid) low = mid;
      else high = mid;
      mid = t;
      value = v;
    } else if (t > mid) high = t;
    else low = t;
  }
  return mid;
}
