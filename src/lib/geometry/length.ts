import type { Cubic, Segment } from './types.ts';

/*
 * Arc length by Gauss–Legendre quadrature. The speed |P'(t)| of a cubic is √(z'(t)·conj z'(t)), z = x + iy: analytic but for
 * branch points at the two roots of z' and their mirror images. How far these lie from the interval bounds the error before
 * anything is summed (Trefethen, "Is Gauss quadrature better than Clenshaw–Curtis?", 2008, theorem 4.5: of order ρ^−2n, ρ of the
 * largest Bernstein ellipse clear of them). So one pass is enough, and the interval is halved only where they are close.
 */

/** Nodes and weights on [−1, 1], positive half, from mpmath at 40 digits. */
const X4 = [0.33998104358485626, 0.8611363115940526];
const W4 = [0.6521451548625461, 0.34785484513745385];
const X8 = [0.1834346424956498, 0.525532409916329, 0.7966664774136267, 0.9602898564975363];
const W8 = [0.362683783378362, 0.31370664587788727, 0.22238103445337448, 0.10122853629037626];
const X16 = [
  0.09501250983763744, 0.2816035507792589, 0.45801677765722737, 0.6178762444026438, 0.755404408355003,
  0.8656312023878318, 0.9445750230732326, 0.9894009349916499,
];
const W16 = [
  0.1894506104550685, 0.18260341504492358, 0.16915651939500254, 0.14959598881657674, 0.12462897125553388,
  0.09515851168249279, 0.062253523938647894, 0.027152459411754096,
];

// Sums of semi-axes beyond which n nodes leave less than about 1e-15 of the length: ρ^−2n.
const RHO_16 = 2.5;
const RHO_8 = 6.7;
const RHO_4 = 52;

// The speed's coefficients, and the branch points (t = r ± i·m). Module state, but only between two lines of one call.
let px = 0;
let py = 0;
let qx = 0;
let qy = 0;
let rx = 0;
let ry = 0;
let root0 = 0;
let rise0 = 0;
let root1 = 0;
let rise1 = 0;

/** P'(t) = p t² + q t + r and the roots of its complex form. */
function prepare(s: Cubic): void {
  const { a, b, c, d } = s;
  px = 3 * (d.x - a.x + 3 * (b.x - c.x));
  py = 3 * (d.y - a.y + 3 * (b.y - c.y));
  qx = 6 * (a.x - 2 * b.x + c.x);
  qy = 6 * (a.y - 2 * b.y + c.y);
  rx = 3 * (b.x - a.x);
  ry = 3 * (b.y - a.y);
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
  root0 = (hx * px + hy * py) / pp;
  rise0 = (hy * px - hx * py) / pp;
  root1 = (rx * hx + ry * hy) / hh;
  rise1 = (ry * hx - rx * hy) / hh;
}

/** Sum of the semi-axes of the ellipse with foci at the ends of [mid − half, mid + half] through root r + i·m. */
function ellipse(root: number, rise: number, mid: number, half: number): number {
  const x = (root - mid) / half;
  const y = rise / half;
  const yy = y * y;
  const a = 0.5 * (Math.sqrt((x - 1) * (x - 1) + yy) + Math.sqrt((x + 1) * (x + 1) + yy));
  // No root at all (a straight or evenly run segment) divides by zero above: nothing limits the ellipse.
  return a < 1e9 ? a + Math.sqrt(Math.max(0, a * a - 1)) : 1e9;
}

function gauss(nodes: readonly number[], weights: readonly number[], mid: number, half: number): number {
  let sum = 0;
  for (let i = 0; i < nodes.length; i++) {
    const step = half * nodes[i]!;
    const t = mid + step;
    const u = mid - step;
    const tx = (px * t + qx) * t + rx;
    const ty = (py * t + qy) * t + ry;
    const ux = (px * u + qx) * u + rx;
    const uy = (py * u + qy) * u + ry;
    sum += weights[i]! * (Math.sqrt(tx * tx + ty * ty) + Math.sqrt(ux * ux + uy * uy));
  }
  return sum * half;
}

/** Length from t0 to t1 of the prepared cubic, signed. */
function integrate(t0: number, t1: number, depth: number): number {
  const mid = 0.5 * (t0 + t1);
  const half = 0.5 * (t1 - t0);
  const size = Math.abs(half);
  if (size === 0) return 0;
  const rho = Math.min(ellipse(root0, rise0, mid, size), ellipse(root1, rise1, mid, size));
  if (rho > RHO_16 || depth === 0) {
    if (rho > RHO_4) return gauss(X4, W4, mid, half);
    return rho > RHO_8 ? gauss(X8, W8, mid, half) : gauss(X16, W16, mid, half);
  }
  // Cut beside the nearer root: at a cusp both sides are then smooth, and near one the halves shrink fast.
  const near = Math.abs(rise0) < Math.abs(rise1) ? root0 : root1;
  const far = near === root0 ? root1 : root0;
  const low = Math.min(t0, t1);
  const high = Math.max(t0, t1);
  const margin = 0.05 * (high - low);
  const cut =
    near > low + margin && near < high - margin
      ? near
      : far > low + margin && far < high - margin
        ? far
        : mid;
  return integrate(t0, cut, depth - 1) + integrate(cut, t1, depth - 1);
}

/** Deep enough that what is left unresolved beside a cusp (whose speed is zero) is below 1e-14 of the length. */
const DEPTH = 26;

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
  return integrate(t0, t1, DEPTH);
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
  let low = 0;
  let high = 1;
  let t = mm / total;
  let at = integrate(0, t, DEPTH);
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
    at += integrate(t, next, DEPTH);
    // A last step this small has already gone past the rounding of the integral.
    if (Math.abs(next - t) < 1e-10) return next;
    t = next;
  }
  return t;
}
