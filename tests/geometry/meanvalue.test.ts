import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Point } from '../../src/lib/geometry/types.ts';
import { distance, lerp } from '../../src/lib/geometry/point.ts';
import { applyTo } from '../../src/lib/geometry/isometry.ts';
import { fromWeights, meanValueWeights } from '../../src/lib/geometry/meanvalue.ts';
import { motions } from './arbitrary.ts';

const p = (x: number, y: number): Point => ({ x, y });
/** An L, not convex. */
const ell = [p(0, 0), p(100, 0), p(100, 40), p(40, 40), p(40, 120), p(0, 120)];
const inside = fc
  .tuple(fc.integer({ min: 1, max: 999 }), fc.integer({ min: 1, max: 999 }), fc.boolean())
  .map(([i, j, leg]) => (leg ? p(i / 10.01, j / 25.1) : p(i / 25.1, j / 8.4)));

describe('degenerate weights', () => {
  test('two corners hold nothing', () => {
    expect(() => meanValueWeights([p(0, 0), p(1, 1)], p(0, 0))).toThrow(RangeError);
    expect(() => fromWeights([p(0, 0)], [1, 2])).toThrow(RangeError);
  });
  test('a corner is itself', () => {
    expect(meanValueWeights(ell, p(40, 40))).toEqual([0, 0, 0, 1, 0, 0]);
  });
  test('a place on an edge is a mix of its two ends', () => {
    expect(meanValueWeights(ell, p(25, 0))).toEqual([0.75, 0.25, 0, 0, 0, 0]);
    expect(meanValueWeights(ell, p(0, 30))).toEqual([0.75, 0, 0, 0, 0, 0.25]);
  });
});

// Source: derived; by symmetry, and barycentric coordinates of a triangle are unique.
test('the middle of a square weighs all corners alike, a triangle gives areas', () => {
  for (const w of meanValueWeights([p(0, 0), p(2, 0), p(2, 2), p(0, 2)], p(1, 1)))
    expect(w).toBeCloseTo(0.25, 15);
  const triangle = [p(0, 0), p(10, 0), p(0, 10)];
  const [a, b, c] = meanValueWeights(triangle, p(2, 3));
  expect(a).toBeCloseTo(0.5, 14);
  expect(b).toBeCloseTo(0.2, 14);
  expect(c).toBeCloseTo(0.3, 14);
});

// Source: Floater 2003 (memory), with the tangents of half angles taken by the engine's own functions.
test('agree with the published formula', () => {
  fc.assert(
    fc.property(inside, (q) => {
      const n = ell.length;
      const angle = ell.map((u, i) => {
        const v = ell[(i + 1) % n]!;
        return Math.atan2(
          (u.x - q.x) * (v.y - q.y) - (u.y - q.y) * (v.x - q.x),
          (u.x - q.x) * (v.x - q.x) + (u.y - q.y) * (v.y - q.y),
        );
      });
      fc.pre(angle.every((a) => Math.abs(a) < 3.1) && ell.every((u) => distance(u, q) > 1e-3));
      const raw = ell.map(
        (u, i) => (Math.tan(angle[(i + n - 1) % n]! / 2) + Math.tan(angle[i]! / 2)) / distance(u, q),
      );
      const sum = raw.reduce((s, w) => s + w, 0);
      meanValueWeights(ell, q).forEach((w, i) => expect(w).toBeCloseTo(raw[i]! / sum, 10));
    }),
  );
});

// Source (derived): the property that defines them.
test('weights sum to one, give the place back, and follow motions', () => {
  fc.assert(
    fc.property(inside, motions, (q, m) => {
      const w = meanValueWeights(ell, q);
      expect(w.reduce((s, v) => s + v, 0)).toBeCloseTo(1, 12);
      expect(distance(fromWeights(ell, w), q)).toBeLessThan(1e-9);
      const moved = fromWeights(
        ell.map((u) => applyTo(m, u)),
        w,
      );
      expect(distance(moved, applyTo(m, q))).toBeLessThan(1e-9);
    }),
  );
});

test('are smooth up to the edge: near it they tend to the mix of its ends', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 99 }), fc.integer({ min: 0, max: 5 }), (f, i) => {
      const on = lerp(ell[i]!, ell[(i + 1) % 6]!, f / 100);
      const near = p(on.x + (20 - on.x) * 1e-9, on.y + (20 - on.y) * 1e-9);
      const w = meanValueWeights(ell, on);
      meanValueWeights(ell, near).forEach((v, k) => expect(v).toBeCloseTo(w[k]!, 6));
    }),
  );
});
