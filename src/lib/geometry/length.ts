import { GAUSS_12, GAUSS_16, GAUSS_4, GAUSS_8 } from './gauss.ts';
import type { Cubic, Segment } from './types.ts';

/*
 * Arc length by Gauss–Legendre quadrature. The speed |P'(t)| of a cubic is √(z'(t)·conj z'(t)), z = x + iy: analytic but for
 * branch points at the two roots of z' and their mirror images. How far these lie from the interval bounds the error before
 * anything is summed (Trefethen, "Is Gauss quadrature better than Clenshaw–Curtis?", 2008, from memory: of order ρ^−2n, ρ of the
 * largest Bernstein ellipse clear of them). So one pass is enough, and the interval is halved only where they are close.
 */

// Half width of the ellipse (1 at the interval itself) beyond which n nodes leave less than about 1e-15 of the length: it is
// (ρ + 1/ρ)/2 with ρ = 2.5, 3.4, 6.7 and 52, and ρ^−2n tells the error.
const WIDE_16 = 1.45;
const WIDE_12 = 1.847;
const WIDE_8 = 3.425;
const WIDE_4 = 26;
/** A root nearer to an end than this is on it: what that leaves out is below 1e-15 of the length. */
const ON_END = 2e-8;

// P'(t) = p t² + q t + r as px, py, qx, qy, rx, ry; then the branch points r ± i·m as root, rise, root, rise. State only
// within one call; an array, because engines box numbers kept in module variables.
const k = new Float64Array(10);

/** Sets up P' and the roots of its complex form. */
function prepare(s: Cubic): void {
  const { a, b, c, d } = s;
  const px = 3 * (d.x - a.x + 3 * (b.x - c.x));
  const py = 3 * (d.y - a.y + 3 * (b.y - c.y));
  const qx = 6 * (a.x - 2 * b.x + c.x);
  const qy = 6 * (a.y - 2 * b.y + c.y);
  const rx = 3 * (b.x - a.x);
  const ry = 3 * (b.y - a.y);
  // √(q² − 4 p r), on the branch that does not cancel with q.
  const ux = qx * qx - qy * qy - 4 * (px * rx - py * ry);
  const uy = 2 * qx * qy - 4 * (px * ry + py * rx);
  const size = Math.sqrt(ux * ux + uy * uy);
  let vx = Math.sqrt(Math.max(0, (size + ux) / 2));
  let vy = Math.sqrt(Math.max(0, (size - ux) / 2));
  if (uy < 0) vy = -vy;
  if (vx * qx + vy * qy < 0) {
    vx = -vx;
    vy = -vy;
  }
  const hx = -0.5 * (qx + vx);
  const hy = -0.5 * (qy + vy);
  const hh = hx * hx + hy * hy;
  const pp = px * px + py * py;
  k[0] = px;
  k[1] = py;
  k[2] = qx;
  k[3] = qy;
  k[4] = rx;
  k[5] = ry;
  k[6] = (hx * px + hy * py) / pp;
  k[7] = (hy * px - hx * py) / pp;
  k[8] = (rx * hx + ry * hy) / hh;
  k[9] = (ry * hx - rx * hy) / hh;
}

/** Half width of the ellipse with foci at the ends of [mid − half, mid + half] through the root r + i·m. */
function ellipse(root: number, rise: number, mid: number, half: number): number {
  const x = Math.abs(root - mid);
  const yy = rise * rise;
  const near = Math.sqrt((x - half) * (x - half) + yy);
  const wide = (near + Math.sqrt((x + half) * (x + half) + yy)) / (2 * half);
  // No root at all (a straight or evenly run segment) has divided by zero: nothing limits the ellipse. Nor does a root that
  // lies on an end: the speed is smooth away from its own zero.
  return wide < 1e9 && near >= ON_END ? wide : 1e9;
}

/** How far from an end one pass may go that leaves the root (x ahead of the end, y aside) outside the ellipse of WIDE_16. */
function reach(x: number, y: number): number {
  const away = Math.sqrt(x * x + y * y);
  return away < ON_END || !(away < 1e9) ? 1 : (2 * WIDE_16 * away - 2 * x) / (WIDE_16 * WIDE_16 - 1);
}

function gauss(rule: Float64Array, mid: number, half: number): number {
  const px = k[0]!;
  const py = k[1]!;
  // P' about the middle: even and odd parts serve a node and its mirror image.
  const mx = 2 * px * mid + k[2]!;
  const my = 2 * py * mid + k[3]!;
  const cx = (px * mid + k[2]!) * mid + k[4]!;
  const cy = (py * mid + k[3]!) * mid + k[5]!;
  let sum = 0;
  for (let i = 0; i < rule.length; i += 2) {
    const h = half * rule[i]!;
    const hh = h * h;
    const ex = px * hh + cx;
    const ey = py * hh + cy;
    const ox = mx * h;
    const oy = my * h;
    const ux = ex + ox;
    const uy = ey + oy;
    const vx = ex - ox;
    const vy = ey - oy;
    sum += rule[i + 1]! * (Math.sqrt(ux * ux + uy * uy) + Math.sqrt(vx * vx + vy * vy));
  }
  return sum * half;
}

/** How clear of roots the stretch is: half the width of the largest ellipse. */
function clearance(mid: number, half: number): number {
  return Math.min(ellipse(k[6]!, k[7]!, mid, half), ellipse(k[8]!, k[9]!, mid, half));
}

/** One pass with as many nodes as the clearance asks for. */
function pass(wide: number, mid: number, half: number): number {
  if (wide > WIDE_8) return wide > WIDE_4 ? gauss(GAUSS_4, mid, half) : gauss(GAUSS_8, mid, half);
  return wide > WIDE_12 ? gauss(GAUSS_12, mid, half) : gauss(GAUSS_16, mid, half);
}

/** Length from t0 to t1 of the prepared cubic, signed. */
function integrate(t0: number, t1: number): number {
  if (t1 < t0) return -integrate(t1, t0);
  const mid = 0.5 * (t0 + t1);
  const half = 0.5 * (t1 - t0);
  if (half === 0) return 0;
  const wide = clearance(mid, half);
  if (wide > WIDE_16) return pass(wide, mid, half);
  // Cut beside roots: at a cusp both sides are then smooth, and elsewhere roots lie by the ends.
  const first = k[6]! < k[8]! ? k[6]! : k[8]!;
  const last = k[6]! < k[8]! ? k[8]! : k[6]!;
  let from = t0;
  let sum = 0;
  for (const root of [first, last]) {
    if (!(root > from + ON_END && root < t1 - ON_END)) continue;
    sum += passes(from, root);
    from = root;
  }
  return sum + passes(from, t1);
}

/** Length of a stretch whose nearest roots lie by its ends or beyond: several passes, growing away from a root. */
function passes(low: number, high: number): number {
  let sum = 0;
  for (let part = 0; part < 60; part++) {
    const mid = 0.5 * (low + high);
    const half = 0.5 * (high - low);
    if (half === 0) return sum;
    const wide = clearance(mid, half);
    if (wide > WIDE_16) return sum + pass(wide, mid, half);
    const up = Math.min(reach(k[6]! - low, k[7]!), reach(k[8]! - low, k[9]!));
    const down = Math.min(reach(high - k[6]!, k[7]!), reach(high - k[8]!, k[9]!));
    const step = 0.5 * Math.max(ON_END, Math.min(up, down, half));
    if (up < down) {
      sum += gauss(GAUSS_16, low + step, step);
      low += 2 * step;
    } else {
      sum += gauss(GAUSS_16, high - step, step);
      high -= 2 * step;
    }
  }
  return sum + gauss(GAUSS_16, 0.5 * (low + high), 0.5 * (high - low));
}

/**
 * Arc length in mm from parameter t0 to t1 (negative when t1 < t0). Within 1e-12 of the length, cusps included.
 */
export function segmentLength(s: Segment, t0 = 0, t1 = 1): number {
  if (s.kind === 'line') {
    const x = s.d.x - s.a.x;
    const y = s.d.y - s.a.y;
    return Math.sqrt(x * x + y * y) * (t1 - t0);
  }
  prepare(s);
  return integrate(t0, t1);
}

/**
 * The parameter at `mm` along the segment, clamped to [0, 1]; exactly 0 and 1 at nothing and at full length. `total` is the
 * segment's length, for callers who have it. Newton on the arc length, each round measuring only the step since the last;
 * bisection takes over where the speed vanishes.
 */
export function parameterAtLength(s: Segment, mm: number, total = segmentLength(s)): number {
  if (!(mm > 0)) return 0;
  if (mm >= total) return 1;
  if (s.kind === 'line') return mm / total;
  prepare(s);
  return invertLength(mm, total);
}

/** Newton for the cubic that was prepared last, 0 < mm < total. */
function invertLength(mm: number, total: number): number {
  const [px, py, qx, qy, rx, ry] = [k[0]!, k[1]!, k[2]!, k[3]!, k[4]!, k[5]!];
  let low = 0;
  let high = 1;
  let t = mm / total;
  let at = integrate(0, t);
  for (let round = 0; round < 60; round++) {
    const error = at - mm;
    if (Math.abs(error) <= 2e-16 * total) return t;
    if (error > 0) high = t;
    else low = t;
    const dx = (px * t + qx) * t + rx;
    const dy = (py * t + qy) * t + ry;
    const speed2 = dx * dx + dy * dy;
    // Halley's correction of the Newton step: the speed's own slope is (P'·P'')/|P'|.
    const slope = (dx * (2 * px * t + qx) + dy * (2 * py * t + qy)) / (2 * speed2);
    const plain = error / Math.sqrt(speed2);
    const step = plain / Math.max(0.5, 1 - plain * slope);
    let next = t - step;
    if (!(next >= low && next <= high)) next = 0.5 * (low + high);
    if (next === t || high - low < 1e-16) return t;
    at += integrate(t, next);
    // A last step this small has already gone past the rounding of the integral.
    if (Math.abs(next - t) < 1e-10) return next;
    t = next;
  }
  return t;
}
