import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import IsSimpleOp from 'jsts/org/locationtech/jts/operation/IsSimpleOp.js';
import type { Chain, Point } from '../../src/lib/geometry/types.ts';
import { cubic, line } from '../../src/lib/geometry/segment.ts';
import { polyline } from '../../src/lib/geometry/polyline.ts';
import { reverseChain, transformChain } from '../../src/lib/geometry/chain-moved.ts';
import { splineThrough } from '../../src/lib/geometry/spline.ts';
import { contains, isSimple, perimeter, signedArea } from '../../src/lib/geometry/outline.ts';
import { paper } from '../support/paper.ts';
import { motions } from './arbitrary.ts';

const p = (x: number, y: number): Point => ({ x, y });
const polygon = (...q: Point[]): Chain => q.map((a, i) => line(a, q[(i + 1) % q.length]!));
const square = polygon(p(0, 0), p(100, 0), p(100, 100), p(0, 100));

/** Closed outlines of a spline and a straight way back, some of which cross themselves. */
const outlines = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 3000 }), fc.integer({ min: -8000, max: 8000 })), {
    minLength: 3,
    maxLength: 7,
  })
  .map((steps): Chain => {
    const curve = splineThrough(steps.map(([x, y], i) => p(40 * i + x / 100, y / 100)));
    return [...curve, line(curve[curve.length - 1]!.d, curve[0]!.a)];
  });

describe('degenerate outlines', () => {
  test('nothing has no area and holds nothing', () => {
    expect(signedArea([])).toBe(0);
    expect(contains([], p(0, 0))).toBe('outside');
    expect(isSimple([])).toBe(true);
  });
  test('out and straight back has no area and is not simple', () => {
    const there = [line(p(0, 0), p(50, 0)), line(p(50, 0), p(0, 0))];
    expect(signedArea(there)).toBe(0);
    expect(isSimple(there)).toBe(false);
  });
  test('a segment of no length does no harm', () => {
    const s = polygon(p(0, 0), p(100, 0), p(100, 0), p(100, 100), p(0, 100));
    expect(signedArea(s)).toBe(10000);
    expect(isSimple(s)).toBe(true);
    expect(contains(s, p(50, 50))).toBe('inside');
  });
});

describe('area', () => {
  // Source: derived. Right, down, left, up is clockwise on a screen whose y points down.
  test('is positive clockwise on the screen', () => {
    expect(signedArea(square)).toBe(10000);
    expect(signedArea(reverseChain(square))).toBe(-10000);
    expect(perimeter(square)).toBe(400);
  });
  // Source: derived. x = 60 (3 t² − 2 t³), y = 120 t (1 − t): ∫ y dx = 120 · 360 · B(3, 3) = 1440 mm².
  test('is exact under a cubic', () => {
    const arch = [cubic(p(0, 0), p(0, 40), p(60, 40), p(60, 0)), line(p(60, 0), p(0, 0))];
    expect(signedArea(arch)).toBeCloseTo(-1440, 10);
  });
  test('does not suffer far from the origin', () => {
    expect(signedArea(polygon(p(1e6, 1e6), p(1e6 + 10, 1e6), p(1e6 + 10, 1e6 + 10)))).toBe(50);
  });
  // Source (derived): paper's core, which also integrates cubics; its y points down too, and clockwise is positive.
  test('agrees with paper', () => {
    fc.assert(
      fc.property(outlines, (c) => {
        const path = new paper.Path({ insert: false, closed: true });
        for (const s of c) {
          const [b, e] = s.kind === 'cubic' ? [s.b, s.c] : [s.a, s.d];
          if (path.segments.length === 0) path.moveTo(new paper.Point(s.a.x, s.a.y));
          path.cubicCurveTo(
            new paper.Point(b.x, b.y),
            new paper.Point(e.x, e.y),
            new paper.Point(s.d.x, s.d.y),
          );
        }
        expect(Math.abs(signedArea(c) - path.area)).toBeLessThan(1e-7);
      }),
    );
  });
  test('is kept by motions and turned by reversal', () => {
    fc.assert(
      fc.property(outlines, motions, (c, m) => {
        expect(Math.abs(signedArea(transformChain(c, m)) - signedArea(c))).toBeLessThan(1e-6);
        expect(Math.abs(signedArea(reverseChain(c)) + signedArea(c))).toBeLessThan(1e-7);
      }),
    );
  });
});

describe('containment', () => {
  test('the edge has a band', () => {
    expect(contains(square, p(50, 0))).toBe('edge');
    expect(contains(square, p(50, 9e-7))).toBe('edge');
    expect(contains(square, p(50, 2e-6))).toBe('inside');
    expect(contains(square, p(50, -2e-6))).toBe('outside');
    expect(contains(square, p(50, 0.9), 1)).toBe('edge');
    expect(contains(square, p(100, 100))).toBe('edge');
  });
  test('level with corners counts each side once', () => {
    const kite = polygon(p(0, 0), p(50, -50), p(100, 0), p(50, 50));
    expect(contains(kite, p(50, 0))).toBe('inside');
    expect(contains(kite, p(-10, 0))).toBe('outside');
    expect(contains(kite, p(-10, -50))).toBe('outside');
    expect(contains(square, p(-10, 0))).toBe('outside');
    expect(contains(square, p(-10, 100))).toBe('outside');
  });
  // Source (derived): on the line y = x a point lies on the side that the sign of y − x says, without rounding.
  test('the side of a line is told exactly, to the last bit of the coordinates', () => {
    const triangle = polygon(p(-12, -12), p(24, 24), p(24, -12));
    for (let i = 0; i < 32; i++)
      for (let j = 0; j < 32; j++) {
        if (i === j) continue;
        const q = p(0.5 + i * 2 ** -53, 0.5 + j * 2 ** -53);
        // A band below nothing: no point counts as on the edge.
        expect(contains(triangle, q, -1)).toBe(q.y < q.x ? 'inside' : 'outside');
      }
  });

  // Source (derived): paper's core (winding rule not zero), away from the edge.
  test('agrees with paper', () => {
    fc.assert(
      fc.property(
        outlines,
        fc.array(fc.tuple(fc.integer({ min: -20, max: 320 }), fc.integer({ min: -120, max: 120 })), {
          minLength: 20,
          maxLength: 20,
        }),
        (c, tries) => {
          const path = new paper.Path({ insert: false, closed: true, fillRule: 'nonzero' });
          for (const s of c) {
            const [b, e] = s.kind === 'cubic' ? [s.b, s.c] : [s.a, s.d];
            if (path.segments.length === 0) path.moveTo(new paper.Point(s.a.x, s.a.y));
            path.cubicCurveTo(
              new paper.Point(b.x, b.y),
              new paper.Point(e.x, e.y),
              new paper.Point(s.d.x, s.d.y),
            );
          }
          for (const [x, y] of tries) {
            const got = contains(c, p(x, y), 1e-3);
            if (got !== 'edge') expect(got === 'inside').toBe(path.contains(new paper.Point(x, y)));
          }
        },
      ),
    );
  });
});

describe('simplicity', () => {
  // Source: derived.
  test.each<[string, boolean, Chain]>([
    ['a square', true, square],
    ['a figure of eight', false, polygon(p(0, 0), p(100, 100), p(100, 0), p(0, 100))],
    ['a corner that touches a side', false, polygon(p(0, 0), p(100, 0), p(100, 100), p(50, 0), p(0, 100))],
    [
      'a corner that touches a corner',
      false,
      polygon(p(0, 0), p(100, 0), p(50, 50), p(100, 100), p(0, 100), p(50, 50)),
    ],
    [
      'a corner a thousandth off a side',
      true,
      polygon(p(0, 0), p(100, 0), p(100, 100), p(50, 0.001), p(0, 100)),
    ],
    ['a spike', false, polygon(p(0, 0), p(100, 0), p(150, 0), p(100, 0), p(100, 100), p(0, 100))],
    [
      'a smooth round of two cubics',
      true,
      [cubic(p(0, 0), p(0, 60), p(100, 60), p(100, 0)), cubic(p(100, 0), p(100, -60), p(0, -60), p(0, 0))],
    ],
    ['a drop: one cubic back to its start', true, [cubic(p(0, 0), p(90, 60), p(-90, 60), p(0, 0))]],
    [
      'a loop in one cubic',
      false,
      [cubic(p(0, 0), p(120, 100), p(-20, 100), p(100, 0)), line(p(100, 0), p(0, 0))],
    ],
  ])('%s: %s', (_, simple, c) => {
    expect(isSimple(c)).toBe(simple);
    expect(isSimple(reverseChain(c))).toBe(simple);
  });
  // Source (derived): jsts IsSimple on a flattening to 0.001 mm. Outlines whose crossing hangs on less than that are rare among the draws:
  // a disagreement is allowed only where the flattened outline touches itself within 0.002 mm.
  test('agrees with jsts on flattened outlines', () => {
    const factory = new GeometryFactory();
    let simple = 0;
    let crossed = 0;
    fc.assert(
      fc.property(outlines, (c) => {
        const drawn = polyline(c, 0.001);
        const ring = factory.createLineString(drawn.map(({ x, y }) => new Coordinate(x, y)));
        const theirs = new IsSimpleOp(ring).isSimple();
        if (theirs) simple++;
        else crossed++;
        expect(isSimple(c)).toBe(theirs);
      }),
      { numRuns: 200, seed: 20240 },
    );
    expect(Math.min(simple, crossed)).toBeGreaterThan(20);
  });
});
