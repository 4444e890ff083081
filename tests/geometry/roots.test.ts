import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { unitRoots } from '../../src/lib/geometry/roots.ts';

/** Bernstein coefficients of Π (t − r), built factor by factor (derived: multiplying by (t − r) raises the degree by one). */
function withRoots(roots: readonly number[]): number[] {
  let c = [1];
  for (const r of roots) {
    const n = c.length;
    const next: number[] = [];
    for (let i = 0; i <= n; i++) {
      const left = i < n ? c[i]! * -r * (n - i) : 0;
      const right = i > 0 ? c[i - 1]! * (1 - r) * i : 0;
      next.push((left + right) / n);
    }
    c = next;
  }
  return c;
}

// Source: derived; the roots are put in beforehand.
describe('roots in [0, 1]', () => {
  test('nothing, and a constant, have none', () => {
    expect(unitRoots([0, 0, 0])).toEqual([]);
    expect(unitRoots([1, 1, 1, 1])).toEqual([]);
  });
  test('ends count', () => {
    expect(unitRoots([0, 1])).toEqual([0]);
    expect(unitRoots([1, 0])).toEqual([1]);
    expect(unitRoots([0, 1, 1, 0])).toEqual([0, 1]);
  });
  test('a root exactly half way is found once', () => {
    expect(unitRoots(withRoots([0.5, 0.25, 0.75]))).toEqual([0.25, 0.5, 0.75]);
  });
  test('a double root is found within 1e-7 of it, as few roots as rounding leaves it', () => {
    const got = unitRoots(withRoots([0.3, 0.3]));
    expect(got.length).toBeGreaterThan(0);
    expect(got.length).toBeLessThan(4);
    for (const t of got) expect(Math.abs(t - 0.3)).toBeLessThan(1e-7);
    // Exact in doubles, so rounding opens nothing.
    expect(unitRoots(withRoots([0.5, 0.5]))).toEqual([0.5]);
  });
  test('roots outside do not count', () => {
    expect(unitRoots(withRoots([-0.2, 1.4, 3]))).toEqual([]);
  });
  test('well-parted roots come back in order', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 1, max: 19 }), { minLength: 1, maxLength: 5 }),
        (twentieths) => {
          const want = twentieths.map((n) => n / 20).sort((a, b) => a - b);
          const got = unitRoots(withRoots(want));
          expect(got.length).toBe(want.length);
          got.forEach((t, i) => expect(Math.abs(t - want[i]!)).toBeLessThan(1e-10));
        },
      ),
    );
  });
});
