import fc from 'fast-check';
import { Bezier } from 'bezier-js';
import { describe, expect, test } from 'vitest';
import type { Cubic } from '../../src/lib/geometry/types.ts';
import { cubic, line, pointAt, reverse, splitAt } from '../../src/lib/geometry/segment.ts';
import { parameterAtLength, segmentLength } from '../../src/lib/geometry/length.ts';
import { paper } from '../support/paper.ts';
import { cubics } from './arbitrary.ts';
import fixed from './data/lengths.json' with { type: 'json' };

const known = (fixed.curves as { name: string; points: [number, number][]; length: string }[]).map(
  ({ name, points, length }) => {
    const [a, b, c, d] = points.map(([x, y]) => ({ x, y }));
    return { name, curve: cubic(a!, b!, c!, d!), length: Number(length) };
  },
);
const fractions = fc.integer({ min: 1, max: 999 }).map((n) => n / 1000);

describe('degenerate lengths', () => {
  const p = { x: 3, y: 4 };
  test('a point has none', () => {
    expect(segmentLength(line(p, p))).toBe(0);
    expect(segmentLength(cubic(p, p, p, p))).toBe(0);
    expect(parameterAtLength(cubic(p, p, p, p), 1)).toBe(1);
  });
  test('an empty stretch has none, a stretch backwards is negative', () => {
    const s = known[0]!.curve;
    expect(segmentLength(s, 0.3, 0.3)).toBe(0);
    expect(segmentLength(s, 0.7, 0.2)).toBe(-segmentLength(s, 0.2, 0.7));
  });
  test('before the start is the start and past the end the end', () => {
    const s = known[0]!.curve;
    expect(parameterAtLength(s, -1)).toBe(0);
    expect(parameterAtLength(s, 0)).toBe(0);
    expect(parameterAtLength(s, 1e9)).toBe(1);
    expect(parameterAtLength(s, segmentLength(s))).toBe(1);
  });
});

// Source (derived): mpmath at 30 digits, made once (data/lengths.json says how). Goal 3e-13 mm at garment sizes.
describe('arc length against mpmath', () => {
  test.each(known)('$name', ({ curve, length }) => {
    expect(Math.abs(segmentLength(curve) - length)).toBeLessThanOrEqual(3e-13);
  });
  test.each(known)('$name, run backwards', ({ curve, length }) => {
    expect(Math.abs(segmentLength(reverse(curve)) - length)).toBeLessThanOrEqual(5e-13);
  });
  test.each(known.filter(({ length }) => length > 0))(
    '$name: the point at a length is at that length',
    ({ curve, length }) => {
      for (let i = 1; i < 40; i++) {
        const mm = (length * i) / 40;
        expect(Math.abs(segmentLength(curve, 0, parameterAtLength(curve, mm)) - mm)).toBeLessThan(1e-12);
      }
    },
  );
});

// Source (derived): paper's core and bezier-js, outside libraries, on even curves where both are good (bezier-js: 24 nodes, no halving).
describe('arc length against libraries', () => {
  const toPaper = (s: Cubic): InstanceType<typeof paper.Curve> =>
    new paper.Curve(
      new paper.Point(s.a.x, s.a.y),
      new paper.Point(s.b.x - s.a.x, s.b.y - s.a.y),
      new paper.Point(s.c.x - s.d.x, s.c.y - s.d.y),
      new paper.Point(s.d.x, s.d.y),
    );
  const even = fc
    .tuple(
      fc.integer({ min: 0, max: 30 }),
      fc.integer({ min: 0, max: 30 }),
      fc.integer({ min: 120, max: 200 }),
    )
    .map(([r, h, w]) => cubic({ x: 0, y: 0 }, { x: w / 3, y: r }, { x: (2 * w) / 3, y: h }, { x: w, y: 0 }));
  test('even curves agree with bezier-js to 1e-9 mm and with paper to 1e-5 mm', () => {
    fc.assert(
      fc.property(even, (s) => {
        const length = segmentLength(s);
        expect(
          Math.abs(length - new Bezier([s.a, s.b, s.c, s.d].map(({ x, y }) => ({ x, y }))).length()),
        ).toBeLessThan(1e-9);
        expect(Math.abs(length - toPaper(s).length)).toBeLessThan(1e-5);
      }),
    );
  });
});

// Source (derived): what the words mean.
describe('for any cubic', () => {
  test('splitting changes no length', () => {
    fc.assert(
      fc.property(cubics, fractions, (s, t) => {
        const [p, q] = splitAt(s, t);
        const whole = segmentLength(s);
        expect(Math.abs(segmentLength(p) + segmentLength(q) - whole)).toBeLessThan(1e-12 * (1 + whole) * 4);
        expect(Math.abs(segmentLength(p) - segmentLength(s, 0, t))).toBeLessThan(1e-12 * (1 + whole) * 4);
      }),
      { numRuns: 500 },
    );
  });
  test('no chain of chords is longer, and fine ones come close', () => {
    fc.assert(
      fc.property(cubics, (s) => {
        let chords = 0;
        for (let i = 0; i < 500; i++) {
          const p = pointAt(s, i / 500);
          const q = pointAt(s, (i + 1) / 500);
          chords += Math.hypot(p.x - q.x, p.y - q.y);
        }
        const length = segmentLength(s);
        expect(length).toBeGreaterThanOrEqual(chords - 1e-9);
        expect(length - chords).toBeLessThan(0.05);
      }),
    );
  });
  test('the parameter at a length gives that length', () => {
    fc.assert(
      fc.property(cubics, fractions, (s, f) => {
        const whole = segmentLength(s);
        fc.pre(whole > 0.1);
        expect(Math.abs(segmentLength(s, 0, parameterAtLength(s, f * whole)) - f * whole)).toBeLessThan(
          3e-12 + 1e-14 * whole,
        );
      }),
      { numRuns: 500 },
    );
  });
});
