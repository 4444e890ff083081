import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Cubic, Point } from '../../src/lib/geometry/types.ts';
import { distance, samePoint } from '../../src/lib/geometry/point.ts';
import { derivativeAt, line } from '../../src/lib/geometry/segment.ts';
import { transformChain } from '../../src/lib/geometry/chain-moved.ts';
import { applyTo } from '../../src/lib/geometry/isometry.ts';
import { hausdorff } from '../../src/lib/geometry/distance.ts';
import { splineThrough } from '../../src/lib/geometry/spline.ts';
import { motions } from './arbitrary.ts';

const p = (x: number, y: number): Point => ({ x, y });
const rows = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 3000 }), fc.integer({ min: -9000, max: 9000 })), {
    minLength: 3,
    maxLength: 8,
  })
  .map((steps) => steps.map(([x, y], i) => p(50 * i + x / 100, y / 100)));

describe('degenerate splines', () => {
  test('one place is not a line', () => {
    expect(() => splineThrough([])).toThrow(RangeError);
    expect(() => splineThrough([p(1, 1)])).toThrow(RangeError);
    expect(() => splineThrough([p(1, 1), p(1, 1), p(1, 1)])).toThrow(RangeError);
  });
  test('two points give a line, also when one is given twice', () => {
    expect(splineThrough([p(0, 0), p(3, 4)])).toEqual([line(p(0, 0), p(3, 4))]);
    expect(splineThrough([p(0, 0), p(0, 0), p(3, 4), p(3, 4)])).toEqual([line(p(0, 0), p(3, 4))]);
  });
  test('points in a row give a straight, evenly run curve', () => {
    const c = splineThrough([p(0, 0), p(30, 0), p(90, 0)]) as Cubic[];
    expect(c.map(({ b, c: e }) => [b.x, b.y, e.x, e.y])).toEqual([
      [10, 0, 20, 0],
      [50, 0, 70, 0],
    ]);
  });
});

// Source: derived. Natural spline through (0, 0), (1, 1), (2, 0) with even knots h = √2: slopes of y are 3/2, 0, −3/2 over h.
test('three points, by hand', () => {
  const [s] = splineThrough([p(0, 0), p(1, 1), p(2, 0)]) as Cubic[];
  expect(s!.b.x).toBeCloseTo(1 / 3, 14);
  expect(s!.b.y).toBeCloseTo(0.5, 14);
  expect(s!.c.y).toBeCloseTo(1, 14);
});

// Source (derived): what C2 and natural mean; derivatives taken by knot spacing.
test('passes through all points bit for bit, smooth to the second derivative, with straight ends', () => {
  fc.assert(
    fc.property(rows, (row) => {
      const c = splineThrough(row) as Cubic[];
      expect(c.length).toBe(row.length - 1);
      const h = c.map((s) => distance(s.a, s.d));
      const second = (s: Cubic, k: number, end: boolean): Point => {
        const [o, q, r] = end ? [s.d, s.c, s.b] : [s.a, s.b, s.c];
        return p((6 * (o.x - 2 * q.x + r.x)) / k ** 2, (6 * (o.y - 2 * q.y + r.y)) / k ** 2);
      };
      c.forEach((s, i) => {
        expect(samePoint(s.a, row[i]!) && samePoint(s.d, row[i + 1]!)).toBe(true);
        if (i === 0) return;
        const before = c[i - 1]!;
        const v = derivativeAt(before, 1);
        const w = derivativeAt(s, 0);
        expect(distance(p(v.x / h[i - 1]!, v.y / h[i - 1]!), p(w.x / h[i]!, w.y / h[i]!))).toBeLessThan(
          1e-12,
        );
        expect(distance(second(before, h[i - 1]!, true), second(s, h[i]!, false))).toBeLessThan(1e-12);
      });
      expect(distance(second(c[0]!, h[0]!, false), p(0, 0))).toBeLessThan(1e-12);
      expect(distance(second(c[c.length - 1]!, h[h.length - 1]!, true), p(0, 0))).toBeLessThan(1e-12);
    }),
  );
});

test('moved points give the moved spline', () => {
  fc.assert(
    fc.property(rows, motions, (row, m) => {
      const moved = splineThrough(row.map((q) => applyTo(m, q)));
      expect(hausdorff(moved, transformChain(splineThrough(row), m))).toBeLessThan(1e-6);
    }),
    { numRuns: 30 },
  );
});
