import fc from 'fast-check';
import type { Chain, Cubic, Isometry, Point } from '../../src/lib/geometry/types.ts';
import { cubic } from '../../src/lib/geometry/segment.ts';
import { splineThrough } from '../../src/lib/geometry/spline.ts';
import { compose, rotationByAngle, translation } from '../../src/lib/geometry/isometry.ts';

/** What property tests draw from: numbers of the size of a garment, to a hundredth of a millimetre. */
export const millimetres: fc.Arbitrary<number> = fc.integer({ min: -40000, max: 40000 }).map((n) => n / 100);

export const points: fc.Arbitrary<Point> = fc.record({ x: millimetres, y: millimetres });

export const cubics: fc.Arbitrary<Cubic> = fc
  .tuple(points, points, points, points)
  .map(([a, b, c, d]) => cubic(a, b, c, d));

/** Three to six well-parted points with a spline through them. */
export const chains: fc.Arbitrary<Chain> = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 4000 }), fc.integer({ min: -10000, max: 10000 })), {
    minLength: 3,
    maxLength: 6,
  })
  .map((steps) => splineThrough(steps.map(([x, y], i) => ({ x: 60 * i + x / 100, y: y / 100 }))));

export const angles: fc.Arbitrary<number> = fc.integer({ min: -3141, max: 3141 }).map((n) => n / 1000);

export const motions: fc.Arbitrary<Isometry> = fc
  .tuple(points, angles, points)
  .map(([pivot, angle, shift]) => compose(translation(shift), rotationByAngle(pivot, angle)));
