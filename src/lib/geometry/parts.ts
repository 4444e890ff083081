import type { Cubic } from './types.ts';
import { CONTACT } from './contact.ts';

/*
 * Parts of two cubics that are being halved, in one flat store: for each 8 coordinates, t0, t1, and its box. Used within one
 * search only and cleared before the next; it never shrinks. Functions take a part by number, or by its offset in the store.
 */

/** Numbers a part takes. */
export const WIDTH = 14;

export const parts = { values: new Float64Array(WIDTH * 256), kids: new Int32Array(256), used: 0 };

export function clearParts(): void {
  parts.used = 0;
}

function newPart(): number {
  if ((parts.used + 1) * WIDTH > parts.values.length) {
    const values = new Float64Array(parts.values.length * 2);
    values.set(parts.values);
    parts.values = values;
    const kids = new Int32Array(parts.kids.length * 2);
    kids.set(parts.kids);
    parts.kids = kids;
  }
  parts.kids[parts.used] = 0;
  return parts.used++;
}

function setBox(o: number): void {
  const v = parts.values;
  for (let k = 0; k < 2; k++) {
    const a = v[o + k]!;
    const b = v[o + 2 + k]!;
    const c = v[o + 4 + k]!;
    const d = v[o + 6 + k]!;
    const low1 = a < b ? a : b;
    const low2 = c < d ? c : d;
    const high1 = a < b ? b : a;
    const high2 = c < d ? d : c;
    v[o + 10 + k] = low1 < low2 ? low1 : low2;
    v[o + 12 + k] = high1 > high2 ? high1 : high2;
  }
}

/** The whole of a cubic as a part. */
export function root(s: Cubic): number {
  const i = newPart();
  const v = parts.values;
  const o = i * WIDTH;
  v[o] = s.a.x;
  v[o + 1] = s.a.y;
  v[o + 2] = s.b.x;
  v[o + 3] = s.b.y;
  v[o + 4] = s.c.x;
  v[o + 5] = s.c.y;
  v[o + 6] = s.d.x;
  v[o + 7] = s.d.y;
  v[o + 8] = 0;
  v[o + 9] = 1;
  setBox(o);
  return i;
}

/** First of the two halves of part i; the second is the next. Halved once, however often it is asked for. */
export function halves(i: number): number {
  if (parts.kids[i] !== 0) return parts.kids[i]!;
  const left = newPart();
  newPart();
  parts.kids[i] = left;
  const v = parts.values;
  const o = i * WIDTH;
  const l = left * WIDTH;
  const r = l + WIDTH;
  for (let k = 0; k < 2; k++) {
    const a = v[o + k]!;
    const b = v[o + 2 + k]!;
    const c = v[o + 4 + k]!;
    const d = v[o + 6 + k]!;
    const ab = 0.5 * (a + b);
    const bc = 0.5 * (b + c);
    const cd = 0.5 * (c + d);
    const abc = 0.5 * (ab + bc);
    const bcd = 0.5 * (bc + cd);
    const mid = 0.5 * (abc + bcd);
    v[l + k] = a;
    v[l + 2 + k] = ab;
    v[l + 4 + k] = abc;
    v[l + 6 + k] = mid;
    v[r + k] = mid;
    v[r + 2 + k] = bcd;
    v[r + 4 + k] = cd;
    v[r + 6 + k] = d;
  }
  const t0 = v[o + 8]!;
  const t1 = v[o + 9]!;
  v[l + 8] = t0;
  v[l + 9] = v[r + 8] = 0.5 * (t0 + t1);
  v[r + 9] = t1;
  setBox(l);
  setBox(r);
  return left;
}

/** Whether the boxes or the fat lines of two parts keep them apart. */
export function apart(a: number, b: number): boolean {
  const v = parts.values;
  return (
    v[a + 10]! > v[b + 12]! + CONTACT ||
    v[b + 10]! > v[a + 12]! + CONTACT ||
    v[a + 11]! > v[b + 13]! + CONTACT ||
    v[b + 11]! > v[a + 13]! + CONTACT ||
    besides(a, b) ||
    besides(b, a)
  );
}

/** Whether part b lies wholly to one side of the strip around the chord of part a that holds a. */
function besides(a: number, b: number): boolean {
  const v = parts.values;
  const ax = v[a]!;
  const ay = v[a + 1]!;
  const ex = v[a + 6]! - ax;
  const ey = v[a + 7]! - ay;
  const hb = ex * (v[a + 3]! - ay) - ey * (v[a + 2]! - ax);
  const hc = ex * (v[a + 5]! - ay) - ey * (v[a + 4]! - ax);
  const slack = CONTACT * (Math.abs(ex) + Math.abs(ey));
  const low = Math.min(0, hb, hc) - slack;
  const high = Math.max(0, hb, hc) + slack;
  const p = ex * (v[b + 1]! - ay) - ey * (v[b]! - ax);
  const q = ex * (v[b + 3]! - ay) - ey * (v[b + 2]! - ax);
  const r = ex * (v[b + 5]! - ay) - ey * (v[b + 4]! - ax);
  const s = ex * (v[b + 7]! - ay) - ey * (v[b + 6]! - ax);
  return (p > high && q > high && r > high && s > high) || (p < low && q < low && r < low && s < low);
}

/** All outer products of control legs have one sign; legs of no length do not count. */
export function neverParallel(a: number, b: number): boolean {
  const v = parts.values;
  let sign = 0;
  for (let k = 0; k < 6; k += 2) {
    const px = v[a + k + 2]! - v[a + k]!;
    const py = v[a + k + 3]! - v[a + k + 1]!;
    if (px === 0 && py === 0) continue;
    for (let m = 0; m < 6; m += 2) {
      const qx = v[b + m + 2]! - v[b + m]!;
      const qy = v[b + m + 3]! - v[b + m + 1]!;
      if (qx === 0 && qy === 0) continue;
      const turn = px * qy - py * qx;
      if (turn === 0 || (sign !== 0 && turn < 0 === sign > 0)) return false;
      sign = turn > 0 ? 1 : -1;
    }
  }
  return sign !== 0;
}
