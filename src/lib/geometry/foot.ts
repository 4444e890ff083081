import type { Cubic, Point } from './types.ts';

/*
 * Where the line from p stands square on a cubic: sign changes from − to + of g(t) = (P(t) − p)·P'(t), of fifth degree. Among
 * Bernstein coefficients without a change of sign there is no root, with one change there is one (Farouki, The Bernstein
 * polynomial basis, 2012, §6.3); anything else is halved. Changes from + to − are places farthest off and are passed over.
 */

// g's coefficients, six to a row; a halved part keeps its right half and puts its left half in the next row.
const rows = new Float64Array(6 * 30);
/** Parts shorter than this with roots still unparted hold a place where the distance hardly changes. */
const SHORTEST = 1e-7;

// P(t) − p = ((a t + b) t + c) t + d as ax, ay, bx, by, cx, cy, dx, dy; then the best parameter so far and its distance squared.
// An array, because engines box numbers kept in module variables.
const k = new Float64Array(10);

/** The parameter of the point of s nearest to p; of several alike, the first. */
export function footParameter(s: Cubic, p: Point): number {
  const px = s.a.x - p.x;
  const py = s.a.y - p.y;
  const ux = s.b.x - s.a.x;
  const uy = s.b.y - s.a.y;
  const vx = s.c.x - s.b.x;
  const vy = s.c.y - s.b.y;
  const wx = s.d.x - s.c.x;
  const wy = s.d.y - s.c.y;
  const qx = s.b.x - p.x;
  const qy = s.b.y - p.y;
  const rx = s.c.x - p.x;
  const ry = s.c.y - p.y;
  const ex = s.d.x - p.x;
  const ey = s.d.y - p.y;
  rows[0] = px * ux + py * uy;
  rows[1] = (2 * (px * vx + py * vy) + 3 * (qx * ux + qy * uy)) / 5;
  rows[2] = (px * wx + py * wy + 6 * (qx * vx + qy * vy) + 3 * (rx * ux + ry * uy)) / 10;
  rows[3] = (3 * (qx * wx + qy * wy) + 6 * (rx * vx + ry * vy) + ex * ux + ey * uy) / 10;
  rows[4] = (3 * (rx * wx + ry * wy) + 2 * (ex * vx + ey * vy)) / 5;
  rows[5] = ex * wx + ey * wy;
  k[0] = wx - 2 * vx + ux;
  k[1] = wy - 2 * vy + uy;
  k[2] = 3 * (vx - ux);
  k[3] = 3 * (vy - uy);
  k[4] = 3 * ux;
  k[5] = 3 * uy;
  k[6] = px;
  k[7] = py;
  k[8] = 0;
  k[9] = px * px + py * py;
  search(0, 0, 1);
  return ex * ex + ey * ey < k[9] ? 1 : k[8];
}

function consider(t: number): void {
  const x = ((k[0]! * t + k[2]!) * t + k[4]!) * t + k[6]!;
  const y = ((k[1]! * t + k[3]!) * t + k[5]!) * t + k[7]!;
  const d = x * x + y * y;
  if (d < k[9]!) {
    k[9] = d;
    k[8] = t;
  }
}

function search(o: number, t0: number, t1: number): void {
  let changes = 0;
  let sign = 0;
  let firstSign = 0;
  for (let i = o; i < o + 6; i++) {
    const v = rows[i]!;
    if (v === 0) continue;
    const s = v > 0 ? 1 : -1;
    if (sign === 0) firstSign = s;
    else if (s !== sign) changes++;
    sign = s;
  }
  if (changes === 0) return;
  if (changes === 1) {
    if (firstSign < 0) consider(settle(t0, t1));
    return;
  }
  const mid = 0.5 * (t0 + t1);
  if (t1 - t0 < SHORTEST) {
    consider(mid);
    return;
  }
  // de Casteljau at ½: the right half in place, the left half in the next row.
  const l = o + 6;
  rows[l] = rows[o]!;
  for (let n = 1; n <= 5; n++) {
    for (let i = o; i <= o + 5 - n; i++) rows[i] = 0.5 * (rows[i]! + rows[i + 1]!);
    rows[l + n] = rows[o]!;
  }
  search(l, t0, mid);
  if (rows[o] === 0) consider(mid);
  search(o, mid, t1);
}

/** The one change from − to + of g between low and high: Newton kept inside a shrinking bracket. */
function settle(low: number, high: number): number {
  const ax = k[0]!;
  const ay = k[1]!;
  const bx = k[2]!;
  const by = k[3]!;
  const cx = k[4]!;
  const cy = k[5]!;
  const dx = k[6]!;
  const dy = k[7]!;
  let t = 0.5 * (low + high);
  for (let round = 0; round < 60; round++) {
    const x = ((ax * t + bx) * t + cx) * t + dx;
    const y = ((ay * t + by) * t + cy) * t + dy;
    const vx = (3 * ax * t + 2 * bx) * t + cx;
    const vy = (3 * ay * t + 2 * by) * t + cy;
    const g = x * vx + y * vy;
    if (g > 0) high = t;
    else if (g < 0) low = t;
    else return t;
    const slope = vx * vx + vy * vy + x * (6 * ax * t + 2 * bx) + y * (6 * ay * t + 2 * by);
    const next = t - g / slope;
    if (next >= low && next <= high) {
      // Newton doubles the digits: after a step this small the next is below rounding.
      if (Math.abs(next - t) < 1e-9) return next;
      t = next;
    } else {
      t = 0.5 * (low + high);
      if (high - low < 1e-16) return t;
    }
  }
  return t;
}
