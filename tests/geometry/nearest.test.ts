import fc from 'fast-check';
import { Bezier } from 'bezier-js';
import { describe, expect, test } from 'vitest';
import { distance } from '../../src/lib/geometry/point.ts';
import { cubic, line, pointAt } from '../../src/lib/geometry/segment.ts';
import { chainLength, pointAtLength } from '../../src/lib/geometry/chain.ts';
import { nearestOnChain, nearestOnSegment } from '../../src/lib/geometry/nearest.ts';
import { chains, cubics, points } from './arbitrary.ts';

const p = (x: number, y: number): { x: number; y: number } => ({ x, y });

describe('degenerate feet', () => {
  test('an empty chain has no nearest point', () => {
    expect(() => nearestOnChain([], p(0, 0))).toThrow(RangeError);
  });
  test('a point is its own foot', () => {
    expect(nearestOnSegment(line(p(1, 1), p(1, 1)), p(4, 5))).toEqual({ t: 0, point: p(1, 1), distance: 5 });
    expect(nearestOnSegment(cubic(p(1, 1), p(1, 1), p(1, 1), p(1, 1)), p(4, 5)).distance).toBe(5);
  });
  test('past an end the end is nearest', () => {
    const s = cubic(p(0, 0), p(10, 0), p(20, 0), p(30, 0));
    expect(nearestOnSegment(s, p(-3, 4))).toEqual({ t: 0, point: p(0, 0), distance: 5 });
    expect(nearestOnSegment(s, p(33, 4))).toEqual({ t: 1, point: p(30, 0), distance: 5 });
  });
  // Source: derived. The point lies on the axis of symmetry of an arch, outside: the crown is the foot, exactly half way.
  test('a foot exactly half way is found', () => {
    const arch = cubic(p(0, 0), p(0, 40), p(60, 40), p(60, 0));
    const n = nearestOnSegment(arch, p(30, 50));
    expect([n.t, n.distance]).toEqual([0.5, 20]);
  });
});

test('a chain gives segment, length and distance', () => {
  const c = [line(p(0, 0), p(30, 0)), line(p(30, 0), p(30, 40))];
  expect(nearestOnChain(c, p(33, 10))).toEqual({
    segment: 1,
    t: 0.25,
    length: 40,
    point: p(30, 10),
    distance: 3,
  });
});

// Source (derived): what the words mean: no point of 2,000 is nearer.
test('no point of any curve is nearer than the foot', () => {
  fc.assert(
    fc.property(cubics, points, (s, q) => {
      const n = nearestOnSegment(s, q);
      let best = Infinity;
      for (let i = 0; i <= 2000; i++) best = Math.min(best, distance(q, pointAt(s, i / 2000)));
      expect(n.distance).toBeLessThanOrEqual(best + 1e-12);
      expect(distance(n.point, pointAt(s, n.t))).toBe(0);
    }),
    { numRuns: 300 },
  );
});

// Source (derived): bezier-js' projection, which steps through the curve: never better than ours, mostly as good to 0.1 mm.
test('bezier-js finds nothing nearer', () => {
  fc.assert(
    fc.property(cubics, points, (s, q) => {
      const other = new Bezier([s.a, s.b, s.c, s.d].map(({ x, y }) => ({ x, y }))).project({ ...q });
      expect(nearestOnSegment(s, q).distance).toBeLessThanOrEqual(distance(q, other) + 1e-10);
    }),
  );
});

test('a point of a chain is its own foot', () => {
  fc.assert(
    fc.property(chains, fc.integer({ min: 0, max: 100 }), (c, i) => {
      const q = pointAtLength(c, (chainLength(c) * i) / 100);
      const n = nearestOnChain(c, q);
      expect(n.distance).toBeLessThan(1e-10);
      expect(distance(n.point, pointAtLength(c, n.length))).toBeLessThan(1e-9);
    }),
  );
});
