import type { Cubic, Point } from './types.ts';
import { tangentAt } from './segment.ts';
import { cuspFunction, cusps, seam, setSeam } from './offset-cusps.ts';

/** A fitted piece is taken when no sample of it is farther than this from the true parallel (mm). */
export const FIT_TOLERANCE = 0.004;
const DEEPEST = 12;
/** No piece is divided that is this part of its stretch or less: where a control point lies on an end, none would ever be good enough. */
const LEAST_PART = 1 / 4096;
/** Nor one of so little of the curve: nearer together two nodes have no direction between them. */
const LEAST_SPAN = 1e-6;

/** The parallel of a cubic, as cubics end to end; `cusped` when the curve is hollow with a radius below the width. */
export interface Parallel {
  readonly segments: readonly Cubic[];
  readonly cusped: boolean;
}

// The cubic in hand itself; `seam` holds it as polynomials. Set by fitParallel, read below.
let source: Cubic;

/** A place on the parallel: the point, the seam's unit tangent there, and the parallel's signed speed by t. */
interface Node {
  readonly t: number;
  readonly x: number;
  readonly y: number;
  readonly tx: number;
  readonly ty: number;
  readonly speed: number;
}

function nodeAt(t: number, start?: Point, end?: Point): Node {
  const ax = seam[0]!;
  const bx = seam[1]!;
  const cx = seam[2]!;
  const dx = seam[3]!;
  const ay = seam[4]!;
  const by = seam[5]!;
  const cy = seam[6]!;
  const dy = seam[7]!;
  const width = seam[8]!;
  const vx = (3 * ax * t + 2 * bx) * t + cx;
  const vy = (3 * ay * t + 2 * by) * t + cy;
  const v2 = vx * vx + vy * vy;
  const v = Math.sqrt(v2);
  const px = start ? start.x : end ? end.x : ((ax * t + bx) * t + cx) * t + dx;
  const py = start ? start.y : end ? end.y : ((ay * t + by) * t + cy) * t + dy;
  const size = Math.abs(ax) + Math.abs(bx) + Math.abs(cx) + Math.abs(ay) + Math.abs(by) + Math.abs(cy);
  if (v > 1e-7 * size) {
    const tx = vx / v;
    const ty = vy / v;
    const bend = (vx * (6 * ay * t + 2 * by) - vy * (6 * ax * t + 2 * bx)) / v2;
    return { t, x: px + width * ty, y: py - width * tx, tx, ty, speed: v + width * bend };
  }
  // A control point lies on this end: the direction comes from the next one, the rate of turn from just inside.
  const tangent = tangentAt(source, t < LEAST_SPAN ? 0 : t > 1 - LEAST_SPAN ? 1 : t);
  const inside = nodeAt(t < 0.5 ? t + 1e-4 : t - 1e-4);
  return {
    t,
    x: px + width * tangent.y,
    y: py - width * tangent.x,
    tx: tangent.x,
    ty: tangent.y,
    speed: inside.speed,
  };
}

// Handle lengths of the piece in hand, found by `fitPiece`.
let alpha = 0;
let beta = 0;

const AT = [0.25, 0.5, 0.75] as const;

/**
 * Handle lengths for the piece between two nodes: those of the parallel's own derivative, then one least-squares step that
 * takes out the error square to the curve at three places. Ends and end tangents stay exact. Returns the largest error
 * found afterwards at four other places, measured from the seam line itself.
 */
function fitPiece(p: Node, q: Node): number {
  const ax = seam[0]!;
  const bx = seam[1]!;
  const cx = seam[2]!;
  const dx = seam[3]!;
  const ay = seam[4]!;
  const by = seam[5]!;
  const cy = seam[6]!;
  const dy = seam[7]!;
  const width = seam[8]!;
  const span = q.t - p.t;
  const chord = Math.sqrt((q.x - p.x) * (q.x - p.x) + (q.y - p.y) * (q.y - p.y));
  let handleP = (p.speed * span) / 3;
  let handleQ = (q.speed * span) / 3;
  // At a cusp the parallel stands still, and so the handle has no length.
  const cuspP = Math.abs(handleP) < 1e-6 * chord;
  const cuspQ = Math.abs(handleQ) < 1e-6 * chord;
  for (let round = 0; round < 2; round++) {
    let m11 = 0;
    let m12 = 0;
    let m22 = 0;
    let r1 = 0;
    let r2 = 0;
    for (let i = 0; i < 3; i++) {
      const u = AT[i]!;
      const w = 1 - u;
      const b1 = 3 * w * w * u;
      const b2 = 3 * w * u * u;
      const near = w * w * w + b1;
      const far = u * u * u + b2;
      const fx = near * p.x + far * q.x + b1 * handleP * p.tx - b2 * handleQ * q.tx;
      const fy = near * p.y + far * q.y + b1 * handleP * p.ty - b2 * handleQ * q.ty;
      let t = p.t + u * span;
      let e = 0;
      let nx = 0;
      let ny = 0;
      // The first round compares at equal parameters, the second at the foot of the fitted point on the seam line.
      for (let step = 0; step <= round; step++) {
        const vx = (3 * ax * t + 2 * bx) * t + cx;
        const vy = (3 * ay * t + 2 * by) * t + cy;
        const gx = fx - (((ax * t + bx) * t + cx) * t + dx);
        const gy = fy - (((ay * t + by) * t + cy) * t + dy);
        const v2 = vx * vx + vy * vy;
        const v = Math.sqrt(v2);
        nx = vy / v;
        ny = -vx / v;
        if (step < round) {
          // Newton on (f − p)·p' = 0.
          const slope = gx * (6 * ax * t + 2 * bx) + gy * (6 * ay * t + 2 * by) - v2;
          t -= (gx * vx + gy * vy) / slope;
        } else {
          e = width - (gx * nx + gy * ny);
        }
      }
      if (!(e * e < 1e8)) return Infinity;
      const k1 = cuspP ? 0 : b1 * (nx * p.tx + ny * p.ty);
      const k2 = cuspQ ? 0 : -b2 * (nx * q.tx + ny * q.ty);
      m11 += k1 * k1;
      m12 += k1 * k2;
      m22 += k2 * k2;
      r1 += k1 * e;
      r2 += k2 * e;
    }
    // Almost straight pieces cannot tell the two handles apart; a little damping leaves those alone.
    const damp = 1e-7 + 1e-5 * (m11 + m22);
    m11 += damp;
    m22 += damp;
    const det = m11 * m22 - m12 * m12;
    handleP += (r1 * m22 - r2 * m12) / det;
    handleQ += (r2 * m11 - r1 * m12) / det;
  }
  alpha = handleP;
  beta = handleQ;
  // Handles that point backwards or reach past the other end belong to a piece that turns too far.
  if (Math.max(Math.abs(handleP), Math.abs(handleQ)) > 1.2 * chord) return Infinity;
  if ((!cuspP && handleP * p.speed < 0) || (!cuspQ && handleQ * q.speed < 0)) return Infinity;
  return worst(p, q, handleP, handleQ);
}

/** A foot is near enough when what is left along the seam line is below this (mm); its square counts, over the width. */
const FOOT = 0.03;

const CHECK = [0.13, 0.38, 0.62, 0.87] as const;

/** Largest distance, at four places, of the fitted piece from the true parallel, in mm. */
function worst(p: Node, q: Node, handleP: number, handleQ: number): number {
  const ax = seam[0]!;
  const bx = seam[1]!;
  const cx = seam[2]!;
  const dx = seam[3]!;
  const ay = seam[4]!;
  const by = seam[5]!;
  const cy = seam[6]!;
  const dy = seam[7]!;
  const width = seam[8]!;
  const span = q.t - p.t;
  let most = 0;
  for (let i = 0; i < 4; i++) {
    const u = CHECK[i]!;
    const w = 1 - u;
    const b1 = 3 * w * w * u;
    const b2 = 3 * w * u * u;
    const near = w * w * w + b1;
    const far = u * u * u + b2;
    const fx = near * p.x + far * q.x + b1 * handleP * p.tx - b2 * handleQ * q.tx;
    const fy = near * p.y + far * q.y + b1 * handleP * p.ty - b2 * handleQ * q.ty;
    let t = p.t + u * span;
    let vx: number;
    let vy: number;
    let gx: number;
    let gy: number;
    // Newton for the foot; where the curve is nearly as hollow as the parallel is far, it needs more than one step.
    for (let round = 0; ; round++) {
      vx = (3 * ax * t + 2 * bx) * t + cx;
      vy = (3 * ay * t + 2 * by) * t + cy;
      gx = fx - (((ax * t + bx) * t + cx) * t + dx);
      gy = fy - (((ay * t + by) * t + cy) * t + dy);
      const along = gx * vx + gy * vy;
      if (along * along < FOOT * FOOT * (vx * vx + vy * vy)) break;
      if (round === 6) return Infinity;
      t -= along / (gx * (6 * ax * t + 2 * bx) + gy * (6 * ay * t + 2 * by) - (vx * vx + vy * vy));
    }
    const e = Math.abs((gx * vy - gy * vx) / Math.sqrt(vx * vx + vy * vy) - width);
    if (!(e <= most)) most = e;
  }
  return most === most ? most : Infinity;
}

function push(p: Node, q: Node, out: Cubic[]): void {
  const a = out.length > 0 ? out[out.length - 1]!.d : { x: p.x, y: p.y };
  out.push({
    kind: 'cubic',
    a,
    b: { x: p.x + alpha * p.tx, y: p.y + alpha * p.ty },
    c: { x: q.x - beta * q.tx, y: q.y - beta * q.ty },
    d: { x: q.x, y: q.y },
  });
}

/**
 * Fits one run without a cusp inside; the error falls with the sixth power of the pieces, which tells how many to try. `least`: the span of t that
 * is divided no more, which bounds the pieces, as `depth` alone does not where each is divided in four.
 */
function fitRun(p: Node, q: Node, tolerance: number, depth: number, least: number, out: Cubic[]): void {
  const error = fitPiece(p, q);
  const turn = p.tx * q.tx + p.ty * q.ty;
  if ((error <= tolerance && turn > -0.2) || depth === 0 || q.t - p.t <= least) {
    push(p, q, out);
    return;
  }
  const ratio = error / tolerance;
  const pieces = ratio < 50 ? 2 : ratio < 600 ? 3 : 4;
  let from = p;
  for (let i = 1; i <= pieces; i++) {
    const to = i === pieces ? q : nodeAt(p.t + ((q.t - p.t) * i) / pieces);
    fitRun(from, to, tolerance, depth - 1, least, out);
    from = to;
  }
}

/** Fits the stretch between two cusps; one that runs backwards is cut out later and need not be fitted closely. */
function fitStretch(p: Node, q: Node, out: Cubic[]): void {
  const rough = 0.01 * (Math.abs(p.x - q.x) + Math.abs(p.y - q.y));
  const backwards = cuspFunction(0.5 * (p.t + q.t)) < 0;
  const tolerance = backwards ? Math.max(rough, FIT_TOLERANCE) : FIT_TOLERANCE;
  fitRun(p, q, tolerance, DEEPEST, Math.max(LEAST_PART * (q.t - p.t), LEAST_SPAN), out);
}

/**
 * The curve parallel to `s` at `w` mm on the outer side of a clockwise outline (left of the direction of travel on the
 * screen), as fitted cubics at most 0.01 mm off, their ends and end tangents exact. Past a cusp the parallel runs backwards;
 * that stretch is only roughly fitted, as the clean-up takes it out. (Exact parallel: p + w·n, n = (t.y, −t.x).)
 */
export function fitParallel(s: Cubic, w: number): Parallel {
  source = s;
  setSeam(s, w);
  const { a, d } = s;
  const out: Cubic[] = [];
  const end = nodeAt(1, undefined, d);
  let from = nodeAt(0, a);
  const breaks = cusps();
  for (let i = 0; i < breaks.length; i++) {
    const to = nodeAt(breaks[i]!);
    fitStretch(from, to, out);
    from = to;
  }
  fitStretch(from, end, out);
  return { segments: out, cusped: breaks.length > 0 || end.speed < 0 };
}
