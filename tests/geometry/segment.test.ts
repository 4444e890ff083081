import fc from 'fast-check';
import { Bezier } from 'bezier-js';
import { describe, expect, test } from 'vitest';
import { distance, samePoint } from '../../src/lib/geometry/point.ts';
import {
  between,
  bounds,
  cubic,
  derivativeAt,
  line,
  pointAt,
  reverse,
  splitAt,
  tangentAt,
  transform,
} from '../../src/lib/geometry/segment.ts';
import { cubics, motions } from './arbitrary.ts';

const a = { x: 0, y: 0 };
const d = { x: 30, y: 40 };
const fractions = fc.integer({ min: 1, max: 999 }).map((n) => n / 1000);

describe('degenerate segments', () => {
  test('a point has no tangent', () => {
    expect(() => tangentAt(line(a, a), 0.5)).toThrow(RangeError);
    expect(() => tangentAt(cubic(d, d, d, d), 0)).toThrow(RangeError);
  });
  // Source: derived. With b on a the curve leaves a towards c; with both there, towards d.
  test('a control point on an end leaves the direction to the next', () => {
    expect(tangentAt(cubic(a, a, d, { x: 60, y: 0 }), 0)).toEqual({ x: 0.6, y: 0.8 });
    expect(tangentAt(cubic(a, a, a, d), 0)).toEqual({ x: 0.6, y: 0.8 });
    expect(tangentAt(cubic({ x: 9, y: 1 }, a, d, d), 1)).toEqual({ x: 0.6, y: 0.8 });
    expect(tangentAt(cubic(a, d, d, d), 1)).toEqual({ x: 0.6, y: 0.8 });
  });
  test('ends are kept bit for bit', () => {
    const s = cubic({ x: 0.1, y: 0.2 }, { x: 1e9, y: 1 }, { x: 3, y: -1e9 }, { x: 0.3, y: 0.7 });
    expect(samePoint(pointAt(s, 0), s.a)).toBe(true);
    expect(samePoint(pointAt(s, 1), s.d)).toBe(true);
    expect(between(s, 0, 1)).toBe(s);
  });
});

test('a line is walked evenly', () => {
  expect(pointAt(line(a, d), 0.5)).toEqual({ x: 15, y: 20 });
  expect(derivativeAt(line(a, d), 0.3)).toEqual({ x: 30, y: 40 });
  expect(splitAt(line(a, d), 0.5)).toEqual([line(a, { x: 15, y: 20 }), line({ x: 15, y: 20 }, d)]);
});

// Source (derived): bezier-js, an outside library.
test('points, derivatives and boxes agree with bezier-js', () => {
  fc.assert(
    fc.property(cubics, fractions, (s, t) => {
      const other = new Bezier([s.a, s.b, s.c, s.d].map(({ x, y }) => ({ x, y })));
      expect(distance(pointAt(s, t), other.get(t))).toBeLessThan(1e-9);
      expect(distance(derivativeAt(s, t), other.derivative(t))).toBeLessThan(1e-8);
      const box = bounds(s);
      const { x, y } = other.bbox();
      // bezier-js finds extrema to about 1e-6 of the parameter, which moves a box by less than 1e-6 mm.
      for (const [got, want] of [
        [box.minX, x.min],
        [box.maxX, x.max],
        [box.minY, y.min],
        [box.maxY, y.max],
      ] as const)
        expect(Math.abs(got - want)).toBeLessThan(1e-6);
    }),
  );
});

// Source (derived): what the words mean.
describe('for any cubic', () => {
  test('halves share their joint bit for bit and lie on the curve', () => {
    fc.assert(
      fc.property(cubics, fractions, fractions, (s, t, r) => {
        const [p, q] = splitAt(s, t);
        expect(samePoint(p.d, q.a)).toBe(true);
        expect(samePoint(p.a, s.a)).toBe(true);
        expect(samePoint(q.d, s.d)).toBe(true);
        expect(distance(pointAt(p, r), pointAt(s, t * r))).toBeLessThan(1e-10);
        expect(distance(pointAt(q, r), pointAt(s, t + (1 - t) * r))).toBeLessThan(1e-10);
      }),
    );
  });
  test('a part lies on the curve and ends exactly on its points', () => {
    fc.assert(
      fc.property(cubics, fractions, fractions, fractions, (s, t, u, r) => {
        fc.pre(t !== u);
        const [from, to] = t < u ? [t, u] : [u, t];
        const part = between(s, from, to);
        expect(samePoint(part.a, pointAt(s, from))).toBe(true);
        expect(samePoint(part.d, pointAt(s, to))).toBe(true);
        expect(distance(pointAt(part, r), pointAt(s, from + (to - from) * r))).toBeLessThan(1e-10);
      }),
    );
  });
  test('run backwards or moved, the points are the same', () => {
    fc.assert(
      fc.property(cubics, motions, fractions, (s, m, t) => {
        expect(distance(pointAt(reverse(s), t), pointAt(s, 1 - t))).toBeLessThan(1e-10);
        const { a: p, d: q } = transform(s, m);
        expect(Math.abs(distance(p, q) - distance(s.a, s.d))).toBeLessThan(1e-9);
      }),
    );
  });
  test('the box holds the curve and is touched on all sides', () => {
    fc.assert(
      fc.property(cubics, (s) => {
        const box = bounds(s);
        let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
        for (let i = 0; i <= 400; i++) {
          const p = pointAt(s, i / 400);
          [x0, y0, x1, y1] = [Math.min(x0, p.x), Math.min(y0, p.y), Math.max(x1, p.x), Math.max(y1, p.y)];
        }
        const low = Math.min(x0 - box.minX, y0 - box.minY, box.maxX - x1, box.maxY - y1);
        const high = Math.max(x0 - box.minX, y0 - box.minY, box.maxX - x1, box.maxY - y1);
        expect(low).toBeGreaterThan(-1e-10);
        // 400 steps miss an extremum by at most |P''| / 8 / 400², below 0.02 mm for these sizes.
        expect(high).toBeLessThan(0.02);
      }),
    );
  });
});
