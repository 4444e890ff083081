import type { Point, Segment } from './types.ts';
import { bitsCross, clearBits, flatten } from './offset-bits.ts';
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
  clearBits();
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
