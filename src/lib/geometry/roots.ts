/**
 * Roots in [0, 1] of a polynomial in Bernstein form, ascending. A part without a change of sign among its coefficients has no
 * root, a part with one change has one (Descartes in Bernstein form; Farouki, The Bernstein polynomial basis, 2012, §6.3),
 * else it is halved. A double root is reported as one, two or three within 1e-7 of it, as rounding opens it; one that rounding
 * has closed is reported when `touching` allows it.
 */
export function unitRoots(coefficients: readonly number[], touching = true): number[] {
  let size = 0;
  for (const c of coefficients) size = Math.max(size, Math.abs(c));
  const out: number[] = [];
  if (size === 0) return out;
  const zero = 4e-16 * size;
  const n = coefficients.length - 1;
  if (Math.abs(coefficients[0]!) <= zero) out.push(0);
  search(coefficients, 0, 1, zero, touching, out);
  if (Math.abs(coefficients[n]!) <= zero && out[out.length - 1] !== 1) out.push(1);
  return out;
}

/** Roots closer than this are one. */
const SAME = 1e-12;
/** Two roots closer than this may be a double root opened by rounding (its square is the rounding of the values). */
const DOUBLE = 2e-8;

function push(out: number[], t: number): void {
  if (out.length === 0 || t - out[out.length - 1]! > SAME) out.push(t);
}

function search(
  c: readonly number[],
  t0: number,
  t1: number,
  zero: number,
  touching: boolean,
  out: number[],
): void {
  let changes = 0;
  let sign = 0;
  for (let i = 0; i < c.length; i++) {
    const v = c[i]!;
    if (v > -zero && v < zero) continue;
    const s = v > 0 ? 1 : -1;
    if (s === -sign) changes++;
    sign = s;
  }
  if (changes === 0) {
    // All zero: the part lies on the axis within rounding.
    if (sign === 0 && touching) push(out, 0.5 * (t0 + t1));
    return;
  }
  const n = c.length - 1;
  if (changes === 1) {
    push(out, t0 + (t1 - t0) * bracketed(c, sign > 0));
    return;
  }
  if (t1 - t0 < DOUBLE) {
    if (touching || changes % 2 === 1) push(out, 0.5 * (t0 + t1));
    return;
  }
  const left = c.slice();
  const right = c.slice();
  // de Casteljau at ½, keeping both edges of the triangle.
  for (let k = 1; k <= n; k++) {
    for (let i = 0; i <= n - k; i++) right[i] = 0.5 * (right[i]! + right[i + 1]!);
    left[k] = right[0]!;
  }
  const mid = 0.5 * (t0 + t1);
  search(left, t0, mid, zero, touching, out);
  if (Math.abs(right[0]!) <= zero) push(out, mid);
  search(right, mid, t1, zero, touching, out);
}

/**
 * The one root strictly inside, where the value goes up or down through zero: Newton kept inside a shrinking bracket, from the
 * middle, since an end may be a root too, within rounding.
 */
function bracketed(c: readonly number[], rising: boolean): number {
  const n = c.length - 1;
  let low = 0;
  let high = 1;
  let t = 0.5;
  for (let round = 0; round < 80; round++) {
    // Value and slope by Horner in Bernstein form.
    const u = 1 - t;
    let choose = 1;
    let power = 1;
    let choose1 = 1;
    let value = c[0]!;
    // Σ C(n,i) t^i u^(n−i) c_i = ((c0 u + n t c1) u + …); slope likewise on the differences.
    let slope = c[1]! - c[0]!;
    for (let i = 1; i <= n; i++) {
      power *= t;
      choose = (choose * (n - i + 1)) / i;
      value = value * u + choose * power * c[i]!;
      if (i < n) {
        choose1 = (choose1 * (n - i)) / i;
        slope = slope * u + choose1 * power * (c[i + 1]! - c[i]!);
      }
    }
    slope *= n;
    if (value === 0) return t;
    if (value > 0 === rising) high = t;
    else low = t;
    let next = t - value / slope;
    if (!(next >= low && next <= high)) next = 0.5 * (low + high);
    if (Math.abs(next - t) <= 1e-16 || next === t || high - low <= 2e-16) return next;
    t = next;
  }
  return t;
}
