import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitParallel } from '../../src/lib/geometry/fit-offset.ts';
import { distance } from '../../src/lib/geometry/point.ts';
import { cubic } from '../../src/lib/geometry/segment.ts';
import type { Cubic } from '../../src/lib/geometry/types.ts';
import { points } from './arbitrary.ts';

/** Curves with a control point on one end or on both: the seam line stands still there. */
const stalled: fc.Arbitrary<Cubic> = fc
  .tuple(points, points, points, points, fc.constantFrom('start', 'end', 'both'))
  .filter(([a, b, c, d]) => distance(a, d) > 1 && distance(a, c) > 1 && distance(b, d) > 1)
  .map(([a, b, c, d, which]) => cubic(a, which === 'end' ? b : a, which === 'start' ? c : d, d));

describe('fitParallel', () => {
  it('divides a curve with a control point on its end into few pieces, end to end and finite', () => {
    fc.assert(
      fc.property(stalled, fc.integer({ min: 1, max: 60 }), (curve, width) => {
        const { segments } = fitParallel(curve, width);
        expect(segments.length).toBeLessThan(200);
        for (const [i, { a, b, c, d }] of segments.entries()) {
          expect([a, b, c, d].every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))).toBe(true);
          if (i > 0) expect(distance(a, segments[i - 1]!.d)).toBe(0);
        }
      }),
      { numRuns: 2000 },
    );
  });

  it('stays bounded where a curve doubles back beside its end', () => {
    // Found by 20,000 random curves: each took up to millions of pieces without a bound.
    const hard = [
      cubic({ x: 392, y: 210 }, { x: 392, y: 210 }, { x: 12, y: 69 }, { x: 133, y: 114 }),
      cubic({ x: 223, y: 333 }, { x: 255, y: 398 }, { x: 65, y: 11 }, { x: 65, y: 11 }),
      cubic({ x: 81, y: 110 }, { x: 360, y: 396 }, { x: 47, y: 74 }, { x: 47, y: 74 }),
    ];
    for (const curve of hard)
      for (const width of [11.65, 15.05, 43.95])
        expect(fitParallel(curve, width).segments.length).toBeLessThan(200);
  });
});
