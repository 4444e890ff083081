import type { Point, Segment } from './types.ts';

/*
 * Segments flattened into straight bits, all in one flat store: for each the number n of its bits, its box (least x and y, greatest
 * x and y), then n + 1 points as x, y, x, y, ... Used within one search only and cleared before the next; it never shrinks.
 * Functions take a flattened segment by its offset in the store.
 */

/** Where the points begin behind an offset: after the count and the box. */
const HEAD = 5;
/** Most bits of one segment. */
const MOST = 64;
const FLATNESS = 0.004;

let store = new Float64Array(2048);
let used = 0;

export function clearBits(): void {
  used = 0;
}

/** Parameter of point i of n on a flattened curve: closer towards both ends, where loops can be very small. */
const spread = (i: number, n: number): number => {
  const t = i / n;
  return t * t * (3 - 2 * t);
};

/** Weights of the four control points at the places inside, for each number of bits that came up: they are always the same. */
const weights: (Float64Array | undefined)[] = new Array<Float64Array | undefined>(MOST + 1).fill(undefined);

function weightsFor(n: number): Float64Array {
  const out = new Float64Array(4 * n);
  for (let i = 1; i < n; i++) {
    const t = spread(i, n);
    const r = 1 - t;
    out[4 * i] = r * r * r;
    out[4 * i + 1] = 3 * r * r * t;
    out[4 * i + 2] = 3 * r * t * t;
    out[4 * i + 3] = t * t * t;
  }
  weights[n] = out;
  return out;
}

function bitsFor(s: Segment, a: Point, d: Point): number {
  if (s.kind === 'line') return 1;
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
  return Math.min(MOST, Math.max(4, Math.ceil(Math.sqrt(bend / FLATNESS))));
}

/** Flattens a segment closely enough that crossings are told apart, its ends put at a and d; gives its offset. */
export function flatten(s: Segment, a: Point, d: Point): number {
  const n = bitsFor(s, a, d);
  const from = used;
  used += HEAD + 2 * n + 2;
  if (used > store.length) {
    const wider = new Float64Array(2 * used);
    wider.set(store);
    store = wider;
  }
  const v = store;
  const o = from + HEAD;
  v[o] = a.x;
  v[o + 1] = a.y;
  let loX = a.x < d.x ? a.x : d.x;
  let loY = a.y < d.y ? a.y : d.y;
  let hiX = a.x < d.x ? d.x : a.x;
  let hiY = a.y < d.y ? d.y : a.y;
  if (s.kind === 'cubic') {
    const { x: ax, y: ay } = a;
    const { x: dx, y: dy } = d;
    const bx = s.b.x + (ax - s.a.x);
    const by = s.b.y + (ay - s.a.y);
    const cx = s.c.x + (dx - s.d.x);
    const cy = s.c.y + (dy - s.d.y);
    const k = weights[n] ?? weightsFor(n);
    for (let i = 1; i < n; i++) {
      const k0 = k[4 * i]!;
      const k1 = k[4 * i + 1]!;
      const k2 = k[4 * i + 2]!;
      const k3 = k[4 * i + 3]!;
      const x = k0 * ax + k1 * bx + k2 * cx + k3 * dx;
      const y = k0 * ay + k1 * by + k2 * cy + k3 * dy;
      v[o + 2 * i] = x;
      v[o + 2 * i + 1] = y;
      if (x < loX) loX = x;
      if (x > hiX) hiX = x;
      if (y < loY) loY = y;
      if (y > hiY) hiY = y;
    }
  }
  v[o + 2 * n] = d.x;
  v[o + 2 * n + 1] = d.y;
  v[from] = n;
  v[from + 1] = loX;
  v[from + 2] = loY;
  v[from + 3] = hiX;
  v[from + 4] = hiY;
  return from;
}

/** Parameter at a fraction of bit i of n. */
function placeOn(i: number, fraction: number, n: number): number {
  const t = spread(i, n);
  return t + (spread(i + 1, n) - t) * fraction;
}

/**
 * Crossings of two flattened segments as pairs of parameters; `skip` leaves out the joint at the first one's end and the second
 * one's start, `skipStart` the joint at the first one's start and the second one's end.
 */
export function bitsCross(first: number, second: number, skip: boolean, skipStart: boolean): number[] {
  const out: number[] = [];
  const v = store;
  const n = v[first]!;
  const m = v[second]!;
  // Box of the second, to pass over most of the first.
  const loX = v[second + 1]!;
  const loY = v[second + 2]!;
  const hiX = v[second + 3]!;
  const hiY = v[second + 4]!;
  if (v[first + 1]! > hiX || v[first + 3]! < loX || v[first + 2]! > hiY || v[first + 4]! < loY) return out;
  const q = second + HEAD;
  for (let i = 0; i < n; i++) {
    const p = first + HEAD + 2 * i;
    const ax = v[p]!;
    const ay = v[p + 1]!;
    const dx = v[p + 2]!;
    const dy = v[p + 3]!;
    if ((ax > hiX && dx > hiX) || (ax < loX && dx < loX) || (ay > hiY && dy > hiY) || (ay < loY && dy < loY))
      continue;
    let was = (dx - ax) * (v[q + 1]! - ay) - (dy - ay) * (v[q]! - ax);
    for (let j = 0; j < m; j++) {
      const r = q + 2 * j;
      const now = (dx - ax) * (v[r + 3]! - ay) - (dy - ay) * (v[r + 2]! - ax);
      const before = was;
      was = now;
      if (before > 0 === now > 0) continue;
      const bx = v[r]!;
      const by = v[r + 1]!;
      const ex = v[r + 2]! - bx;
      const ey = v[r + 3]! - by;
      const s0 = ex * (ay - by) - ey * (ax - bx);
      const s1 = ex * (dy - by) - ey * (dx - bx);
      if (s0 > 0 === s1 > 0) continue;
      if ((skip && i === n - 1 && j === 0) || (skipStart && i === 0 && j === m - 1)) continue;
      out.push(placeOn(i, s0 / (s0 - s1), n), placeOn(j, before / (before - now), m));
    }
  }
  return out;
}
