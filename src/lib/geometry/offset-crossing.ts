import type { Point, Segment } from './types.ts';
import { between, derivativeAt, line, pointAt, reverse } from './segment.ts';

/** A place on the segments of a run; on a straight run t may lie outside [0, 1] (the line runs on). */
export interface Cut {
  readonly segment: number;
  readonly t: number;
  readonly point: Point;
}

const side = (p: Point, origin: Point, direction: Point): number =>
  (p.x - origin.x) * direction.y - (p.y - origin.y) * direction.x;

/**
 * Where the line through `origin` along `direction` first meets the segments, looking from their end (`fromEnd`) or their
 * start; undefined when it does not.
 */
export function lineMeets(
  segments: readonly Segment[],
  fromEnd: boolean,
  origin: Point,
  direction: Point,
): Cut | undefined {
  for (let i = 0; i < segments.length; i++) {
    const index = fromEnd ? segments.length - 1 - i : i;
    const s = segments[index]!;
    const a = side(s.a, origin, direction);
    const d = side(s.d, origin, direction);
    if (s.kind === 'line') {
      if (a > 0 === d > 0) continue;
      const t = a / (a - d);
      return { segment: index, t, point: pointAt(s, t) };
    }
    const b = side(s.b, origin, direction);
    const c = side(s.c, origin, direction);
    if ((a > 0 && b > 0 && c > 0 && d > 0) || (a < 0 && b < 0 && c < 0 && d < 0)) continue;
    const t = fromEnd ? 1 - firstRoot(d, c, b, a, 0, 1) : firstRoot(a, b, c, d, 0, 1);
    if (t === t) return { segment: index, t, point: pointAt(s, t) };
  }
  return undefined;
}

/**
 * The first root of a cubic in Bernstein form, as a parameter between low and high; NaN when there is none. A part without a
 * change of sign among its coefficients has none (Farouki, The Bernstein polynomial basis, 2012), anything else is halved.
 */
function firstRoot(a: number, b: number, c: number, d: number, low: number, high: number): number {
  if ((a > 0 && b > 0 && c > 0 && d > 0) || (a < 0 && b < 0 && c < 0 && d < 0)) return NaN;
  if (high - low < 1e-16 || (a === 0 && low === 0)) return low;
  // One change of sign: one root, for Newton kept inside a shrinking bracket.
  const up = a < 0;
  if (up !== d < 0 && (up ? b <= c : b >= c) && (up ? a <= b && c <= d : a >= b && c >= d)) {
    let lo = 0;
    let hi = 1;
    let t = a / (a - d);
    for (let round = 0; round < 60; round++) {
      const r = 1 - t;
      const value = r * r * (r * a + 3 * t * b) + t * t * (3 * r * c + t * d);
      if (value < 0 === up) lo = t;
      else hi = t;
      const slope = 3 * (r * r * (b - a) + 2 * r * t * (c - b) + t * t * (d - c));
      let next = t - value / slope;
      if (!(next > lo && next < hi)) next = 0.5 * (lo + hi);
      if (Math.abs(next - t) < 1e-16 || hi - lo < 1e-16) break;
      t = next;
    }
    return low + (high - low) * t;
  }
  const ab = 0.5 * (a + b);
  const bc = 0.5 * (b + c);
  const cd = 0.5 * (c + d);
  const abc = 0.5 * (ab + bc);
  const bcd = 0.5 * (bc + cd);
  const m = 0.5 * (abc + bcd);
  const mid = 0.5 * (low + high);
  const left = firstRoot(a, ab, abc, m, low, mid);
  return left === left ? left : firstRoot(m, bcd, cd, d, mid, high);
}

/** Newton on both parameters from a guess; undefined when it does not settle inside [0, 1]². */
export function settle(s: Segment, u: Segment, t: number, v: number): { t: number; v: number } | undefined {
  const near = 0.25;
  const t0 = t;
  const v0 = v;
  for (let round = 0; round < 12; round++) {
    const p = pointAt(s, t);
    const q = pointAt(u, v);
    const ex = q.x - p.x;
    const ey = q.y - p.y;
    const f = derivativeAt(s, t);
    const g = derivativeAt(u, v);
    const det = f.x * g.y - f.y * g.x;
    if (det * det < 1e-18 * (f.x * f.x + f.y * f.y) * (g.x * g.x + g.y * g.y)) return undefined;
    const dt = (ex * g.y - ey * g.x) / det;
    const dv = (ex * f.y - ey * f.x) / det;
    t += dt;
    v += dv;
    if (!(Math.abs(t - t0) < near && Math.abs(v - v0) < near)) return undefined;
    if (Math.abs(dt) < 1e-14 && Math.abs(dv) < 1e-14) break;
  }
  return t >= 0 && t <= 1 && v >= 0 && v <= 1 ? { t, v } : undefined;
}

/** Parameter of point i of n on a flattened curve: closer towards both ends, where loops can be very small. */
const spread = (i: number, n: number): number => {
  const t = i / n;
  return t * t * (3 - 2 * t);
};

/** Points along a segment as x, y, x, y, ..., close enough that crossings are told apart; its ends put at a and d. */
export function flatten(s: Segment, a: Point, d: Point): Float64Array {
  if (s.kind === 'line') return Float64Array.of(a.x, a.y, d.x, d.y);
  const bx = s.b.x + (a.x - s.a.x);
  const by = s.b.y + (a.y - s.a.y);
  const cx = s.c.x + (d.x - s.d.x);
  const cy = s.c.y + (d.y - s.d.y);
  const bend = Math.max(
    Math.abs(a.x - 2 * bx + cx),
    Math.abs(a.y - 2 * by + cy),
    Math.abs(bx - 2 * cx + d.x),
    Math.abs(by - 2 * cy + d.y),
  );
  const n = Math.min(64, Math.max(4, Math.ceil(Math.sqrt(bend / FLATNESS))));
  const out = new Float64Array(2 * n + 2);
  out[0] = a.x;
  out[1] = a.y;
  for (let i = 1; i < n; i++) {
    const t = spread(i, n);
    const r = 1 - t;
    const k0 = r * r * r;
    const k1 = 3 * r * r * t;
    const k2 = 3 * r * t * t;
    const k3 = t * t * t;
    out[2 * i] = k0 * a.x + k1 * bx + k2 * cx + k3 * d.x;
    out[2 * i + 1] = k0 * a.y + k1 * by + k2 * cy + k3 * d.y;
  }
  out[2 * n] = d.x;
  out[2 * n + 1] = d.y;
  return out;
}

const FLATNESS = 0.004;

/** Parameter at a fraction of bit i of n. */
function placeOn(i: number, fraction: number, n: number): number {
  const t = spread(i, n);
  return t + (spread(i + 1, n) - t) * fraction;
}

/** Crossings of two flattened segments as pairs of parameters; `skip` leaves out the joint at p's end and q's start. */
export function bitsCross(p: Float64Array, q: Float64Array, skip: boolean, skipStart: boolean): number[] {
  const out: number[] = [];
  const n = p.length / 2 - 1;
  const m = q.length / 2 - 1;
  // Box of q, to pass over most of p.
  let loX = Infinity;
  let loY = Infinity;
  let hiX = -Infinity;
  let hiY = -Infinity;
  for (let j = 0; j <= m; j++) {
    const x = q[2 * j]!;
    const y = q[2 * j + 1]!;
    if (x < loX) loX = x;
    if (x > hiX) hiX = x;
    if (y < loY) loY = y;
    if (y > hiY) hiY = y;
  }
  for (let i = 0; i < n; i++) {
    const ax = p[2 * i]!;
    const ay = p[2 * i + 1]!;
    const dx = p[2 * i + 2]!;
    const dy = p[2 * i + 3]!;
    const minX = ax < dx ? ax : dx;
    const maxX = ax < dx ? dx : ax;
    const minY = ay < dy ? ay : dy;
    const maxY = ay < dy ? dy : ay;
    if (minX > hiX || maxX < loX || minY > hiY || maxY < loY) continue;
    let was = (dx - ax) * (q[1]! - ay) - (dy - ay) * (q[0]! - ax);
    for (let j = 0; j < m; j++) {
      const now = (dx - ax) * (q[2 * j + 3]! - ay) - (dy - ay) * (q[2 * j + 2]! - ax);
      const before = was;
      was = now;
      if (before > 0 === now > 0) continue;
      const bx = q[2 * j]!;
      const by = q[2 * j + 1]!;
      const ex = q[2 * j + 2]! - bx;
      const ey = q[2 * j + 3]! - by;
      const s0 = ex * (ay - by) - ey * (ax - bx);
      const s1 = ex * (dy - by) - ey * (dx - bx);
      if (s0 > 0 === s1 > 0) continue;
      if ((skip && i === n - 1 && j === 0) || (skipStart && i === 0 && j === m - 1)) continue;
      out.push(placeOn(i, s0 / (s0 - s1), n), placeOn(j, before / (before - now), m));
    }
  }
  return out;
}

const size = (p: Point): number => Math.sqrt(p.x * p.x + p.y * p.y);

/**
 * The crossing of two runs of curves nearest to their joint (end of the first, start of the second). Straight curves would
 * meet `back` mm before the end of the one and `on` mm after the start of the other.
 */
export function curvesMeet(
  before: readonly Segment[],
  after: readonly Segment[],
  back = Infinity,
  on = Infinity,
): { before: Cut; after: Cut } | undefined {
  const last = before.length - 1;
  const s = before[last]!;
  const u = after[0]!;
  const t0 = 1 - back / size(derivativeAt(s, 1));
  const v0 = on / size(derivativeAt(u, 0));
  if (t0 > 0.7 && v0 < 0.3) {
    const found = settle(s, u, t0, v0);
    if (found && Math.abs(found.t - t0) < 0.1 && Math.abs(found.v - v0) < 0.1) {
      const point = pointAt(s, found.t);
      return { before: { segment: last, t: found.t, point }, after: { segment: 0, t: found.v, point } };
    }
  }
  const flatA = before.map((s) => flatten(s, s.a, s.d));
  const flatB = after.map((s) => flatten(s, s.a, s.d));
  for (let sum = 0; sum < before.length + after.length - 1; sum++) {
    for (let j = Math.max(0, sum - before.length + 1); j <= sum && j < after.length; j++) {
      const i = before.length - 1 - (sum - j);
      const found = bitsCross(flatA[i]!, flatB[j]!, false, false);
      if (found.length === 0) continue;
      const guess = { t: found[found.length - 2]!, v: found[found.length - 1]! };
      const { t, v } = settle(before[i]!, after[j]!, guess.t, guess.v) ?? guess;
      const point = pointAt(before[i]!, t);
      return { before: { segment: i, t, point }, after: { segment: j, t: v, point } };
    }
  }
  return undefined;
}

/** The segment with its ends put exactly on the given points (moved by rounding, or by far less than the fit's error). */
export function withEnds(s: Segment, a: Point, d: Point): Segment {
  if (s.a === a && s.d === d) return s;
  if (s.kind === 'line') return line(a, d);
  return {
    kind: 'cubic',
    a,
    b: { x: s.b.x + (a.x - s.a.x), y: s.b.y + (a.y - s.a.y) },
    c: { x: s.c.x + (d.x - s.d.x), y: s.c.y + (d.y - s.d.y) },
    d,
  };
}

/** The segments from a cut inwards, each turned to run inwards: forwards from a start, backwards from an end. */
export function inwards(segments: readonly Segment[], fromEnd: boolean, cut: Cut | undefined): Segment[] {
  const out: Segment[] = [];
  const first = cut ? cut.segment : fromEnd ? segments.length - 1 : 0;
  for (let i = first; i >= 0 && i < segments.length; i += fromEnd ? -1 : 1) {
    let s = segments[i]!;
    if (cut && i === first) s = fromEnd ? between(s, 0, cut.t) : between(s, cut.t, 1);
    out.push(fromEnd ? reverse(s) : s);
  }
  return out;
}
