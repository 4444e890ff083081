import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import DiscreteHausdorffDistance from 'jsts/org/locationtech/jts/algorithm/distance/DiscreteHausdorffDistance.js';
import type { Chain, Point } from '../../src/lib/geometry/types.ts';
import { distance } from '../../src/lib/geometry/point.ts';
import { cubic, line } from '../../src/lib/geometry/segment.ts';
import { chainLength, pointAtLength } from '../../src/lib/geometry/chain.ts';
import { polyline } from '../../src/lib/geometry/polyline.ts';
import { reverseChain, transformChain } from '../../src/lib/geometry/chain-moved.ts';
import { discreteFrechet, hausdorff, minimumDistance } from '../../src/lib/geometry/distance.ts';
import { nearestOnChain } from '../../src/lib/geometry/nearest.ts';
import { chains, motions } from './arbitrary.ts';

const p = (x: number, y: number): Point => ({ x, y });

describe('degenerate distances', () => {
  const one: Chain = [line(p(0, 0), p(10, 0))];
  test('an empty chain has no distance', () => {
    expect(() => hausdorff([], one)).toThrow(RangeError);
    expect(() => hausdorff(one, [])).toThrow(RangeError);
    expect(() => discreteFrechet([], [p(0, 0)])).toThrow(RangeError);
    expect(() => discreteFrechet([p(0, 0)], [])).toThrow(RangeError);
  });
  test('from itself nothing is far', () => {
    expect(hausdorff(one, one)).toBe(0);
    expect(minimumDistance(one, one)).toBe(0);
    expect(discreteFrechet([p(1, 2)], [p(4, 6)])).toBe(5);
  });
});

// Source: derived by hand.
describe('Hausdorff distance', () => {
  test('counts both ways', () => {
    const short = [line(p(0, 0), p(10, 0))];
    const long = [line(p(0, 0), p(30, 0))];
    expect(hausdorff(short, long)).toBe(20);
    expect(hausdorff(long, short)).toBe(20);
  });
  test('sees what lies between the ends', () => {
    // The arch's crown is 30 from its base line.
    const arch = [cubic(p(0, 0), p(0, 40), p(60, 40), p(60, 0))];
    expect(hausdorff(arch, [line(p(0, 0), p(60, 0))])).toBeCloseTo(30, 6);
    // The middle of the base is as far from a slit in a box as half the box.
    const box = [line(p(0, 0), p(0, 40)), line(p(0, 40), p(60, 40)), line(p(60, 40), p(60, 0))];
    expect(hausdorff(box, [line(p(0, 0), p(60, 0))])).toBeCloseTo(40, 6);
  });
  // Source (derived): jsts' discrete Hausdorff on points every 0.05 mm of flattening; the true value differs by no more than the spacing.
  test('agrees with jsts on flattened curves', () => {
    const factory = new GeometryFactory();
    const geometry = (c: Chain): unknown => {
      const whole = chainLength(c);
      const drawn = Array.from({ length: 301 }, (_, i) => pointAtLength(c, (whole * i) / 300));
      return factory.createLineString(drawn.map(({ x, y }) => new Coordinate(x, y)));
    };
    fc.assert(
      fc.property(chains, chains, (c, k) => {
        const theirs = DiscreteHausdorffDistance.distance(geometry(c), geometry(k));
        // Between its points 1/300 of the chain apart jsts looks at nothing, and chords cut corners.
        const spacing = Math.max(chainLength(c), chainLength(k)) / 300;
        expect(Math.abs(hausdorff(c, k) - theirs)).toBeLessThan(spacing);
      }),
      { numRuns: 40 },
    );
  });
  test('no sampled point is farther, and some come within a thousandth', () => {
    fc.assert(
      fc.property(chains, chains, (c, k) => {
        const h = hausdorff(c, k);
        let sampled = 0;
        for (const [a, b] of [
          [c, k],
          [k, c],
        ] as const) {
          for (const s of a)
            for (let i = 0; i <= 400; i++) {
              const q = pointAtLength([s], (chainLength([s]) * i) / 400);
              sampled = Math.max(sampled, nearestOnChain(b, q).distance);
            }
        }
        expect(h).toBeGreaterThanOrEqual(sampled - 1e-6);
        // No farther than the nearest sample is from the farthest place: half a step.
        expect(h - sampled).toBeLessThan(Math.max(...[...c, ...k].map((s) => chainLength([s]))) / 800);
      }),
      { numRuns: 40 },
    );
  });
  test('motions and direction do not matter', () => {
    fc.assert(
      fc.property(chains, chains, motions, (c, k, m) => {
        const h = hausdorff(c, k);
        expect(Math.abs(hausdorff(transformChain(c, m), transformChain(k, m)) - h)).toBeLessThan(3e-6);
        expect(Math.abs(hausdorff(reverseChain(c), k) - h)).toBeLessThan(3e-6);
      }),
      { numRuns: 50 },
    );
  });
});

describe('discrete Fréchet distance', () => {
  // Source: derived; Eiter & Mannila's recursion (memory), written out below unoptimised.
  const plain = (a: readonly Point[], b: readonly Point[]): number => {
    const memo = new Map<number, number>();
    const go = (i: number, j: number): number => {
      const key = i * b.length + j;
      const known = memo.get(key);
      if (known !== undefined) return known;
      const here = distance(a[i]!, b[j]!);
      let before = i === 0 && j === 0 ? 0 : Infinity;
      if (i > 0) before = Math.min(before, go(i - 1, j));
      if (j > 0) before = Math.min(before, go(i, j - 1));
      if (i > 0 && j > 0) before = Math.min(before, go(i - 1, j - 1));
      const value = Math.max(here, before);
      memo.set(key, value);
      return value;
    };
    return go(a.length - 1, b.length - 1);
  };
  test('agrees with the recursion it comes from', () => {
    fc.assert(
      fc.property(chains, chains, (c, k) => {
        const [a, b] = [polyline(c, 0.5), polyline(k, 0.5)];
        expect(discreteFrechet(a, b)).toBeCloseTo(plain(a, b), 10);
      }),
      { numRuns: 40 },
    );
  });
  test('tells there-and-back from there, which Hausdorff cannot', () => {
    const there = [p(0, 0), p(10, 0), p(20, 0), p(30, 0)];
    const wandering = [p(0, 0), p(10, 0), p(20, 0), p(10, 0), p(0, 0), p(10, 0), p(20, 0), p(30, 0)];
    expect(discreteFrechet(there, wandering)).toBe(10);
    expect(discreteFrechet(there, [...there].reverse())).toBe(30);
  });
});

describe('least distance', () => {
  // Source: derived by hand.
  test('between parted shapes', () => {
    expect(minimumDistance([line(p(0, 0), p(10, 0))], [line(p(13, 4), p(20, 9))])).toBe(5);
    const arch = [cubic(p(0, 0), p(0, 40), p(60, 40), p(60, 0))];
    expect(minimumDistance(arch, [line(p(-100, 37), p(200, 37))])).toBeCloseTo(7, 9);
  });
  test('is nothing where they cross', () => {
    expect(minimumDistance([line(p(0, 0), p(10, 10))], [line(p(0, 10), p(10, 0))])).toBe(0);
  });
  test('no sampled pair is nearer', () => {
    fc.assert(
      fc.property(chains, chains, (c, k) => {
        const moved = transformChain(k, { a: 1, b: 0, c: 0, d: 1, e: 0, f: 300 });
        const least = minimumDistance(c, moved);
        const whole = chainLength(c);
        for (let i = 0; i <= 400; i++) {
          expect(nearestOnChain(moved, pointAtLength(c, (whole * i) / 400)).distance).toBeGreaterThan(
            least - 1e-7,
          );
        }
      }),
      { numRuns: 30 },
    );
  });
});
