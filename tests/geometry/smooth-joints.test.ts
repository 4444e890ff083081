import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance, dot } from '../../src/lib/geometry/point.ts';
import { nearestOnChain } from '../../src/lib/geometry/nearest.ts';
import { chainLength, pointAtLength } from '../../src/lib/geometry/chain.ts';
import { tangentAt } from '../../src/lib/geometry/segment.ts';
import { smoothedCubics } from '../../src/lib/geometry/smooth-joints.ts';
import { splineThrough } from '../../src/lib/geometry/spline.ts';
import { splinePoints } from '../../src/lib/geometry/spline-points.ts';
import type { Point } from '../../src/lib/geometry/types.ts';
import { real } from '../support/real.ts';

const p = (x: number, y: number): Point => ({ x, y });
/** Two cubics that meet in (100, 0) with a break of `turn` radians. */
const broken = (turn: number): Point[] => [
  ...[p(0, 20), p(30, 10), p(60, 0), p(100, 0)],
  ...[p(100 + 40 * Math.cos(turn), 40 * Math.sin(turn)), p(170, 30), p(220, 60)],
];
const breakOf = (control: readonly Point[]): number => {
  const [s, u] = smoothedCubics(control);
  return Math.acos(Math.min(1, dot(tangentAt(s!, 1), tangentAt(u!, 0))));
};

describe('joints', () => {
  it('of all but one direction are given one, with handles as long as before; corners stay', () => {
    fc.assert(
      fc.property(real(-0.099, 0.099), (turn) => {
        const [s, u] = smoothedCubics(broken(turn));
        expect(breakOf(broken(turn))).toBeLessThan(1e-6);
        expect(distance(s!.c, s!.d)).toBeCloseTo(40, 9);
        expect(distance(u!.a, u!.b)).toBeCloseTo(40, 9);
        expect(s!.d).toBe(u!.a);
      }),
    );
    for (const turn of [0.101, 0.5, -1.2]) expect(breakOf(broken(turn))).toBeCloseTo(Math.abs(turn), 6);
    expect(smoothedCubics(broken(0)).flatMap((s) => [s.b, s.c])).toEqual(
      [1, 2, 4, 5].map((i) => broken(0)[i]),
    );
  });
});

describe('points to shape a chain by', () => {
  // Source: the spline through them (derived), measured against the chain at a hundred places.
  it('are few, begin and end with it, and their spline runs near it', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(real(30, 90), real(-60, 60)), { minLength: 3, maxLength: 6 }),
        (steps) => {
          let x = 0;
          const chain = splineThrough(steps.map(([dx, y]) => p((x += dx), y)));
          const points = splinePoints(chain, 1);
          expect(points.length).toBeLessThanOrEqual(16);
          expect(points[0]).toEqual(chain[0]!.a);
          expect(distance(points.at(-1)!, chain.at(-1)!.d)).toBeLessThan(1e-9);
          const spline = splineThrough(points);
          const off = Array.from(
            { length: 101 },
            (_, i) => nearestOnChain(spline, pointAtLength(chain, (chainLength(chain) * i) / 100)).distance,
          );
          expect(Math.max(...off)).toBeLessThan(3);
        },
      ),
      { numRuns: 60 },
    );
    expect(splinePoints([{ kind: 'line', a: p(0, 0), d: p(90, 20) }], 1)).toHaveLength(3);
  });
});
