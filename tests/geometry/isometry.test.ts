import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distance } from '../../src/lib/geometry/point.ts';
import {
  applyTo,
  compose,
  determinant,
  IDENTITY,
  invert,
  reflectionAcross,
  rotationByAngle,
  rotationOf,
  rotationTaking,
  translation,
} from '../../src/lib/geometry/isometry.ts';
import { angles, motions, points } from './arbitrary.ts';

describe('degenerate motions', () => {
  const p = { x: 7, y: -3 };
  test('nothing can be turned from or to the pivot itself', () => {
    expect(() => rotationTaking(p, p, { x: 1, y: 1 })).toThrow(RangeError);
    expect(() => rotationTaking(p, { x: 1, y: 1 }, p)).toThrow(RangeError);
  });
  test('one point gives no mirror line', () => {
    expect(() => reflectionAcross(p, p)).toThrow(RangeError);
  });
  test('turning by nothing changes no bit', () => {
    expect(applyTo(rotationByAngle(p, 0), { x: 1.1, y: 2.2 })).toEqual({ x: 1.1, y: 2.2 });
    expect(applyTo(IDENTITY, p)).toEqual(p);
  });
});

// Source: derived. Centre front is x = 0; the mirror image of a point is (−x, y).
test('mirroring across the vertical axis is exact', () => {
  const m = reflectionAcross({ x: 0, y: -10 }, { x: 0, y: 400 });
  expect(applyTo(m, { x: -123.456, y: 78.9 })).toEqual({ x: 123.456, y: 78.9 });
  expect(determinant(m)).toBe(-1);
});

test('a quarter turn clockwise takes right to down', () => {
  const p = applyTo(rotationByAngle({ x: 10, y: 10 }, Math.PI / 2), { x: 15, y: 10 });
  expect(distance(p, { x: 10, y: 15 })).toBeLessThan(1e-14);
});

test('turning one leg onto the other needs no angle', () => {
  const m = rotationTaking({ x: 0, y: 0 }, { x: 5, y: 0 }, { x: 0, y: 2 });
  expect(rotationOf(m)).toEqual({ c: 0, s: 1 });
  expect(applyTo(m, { x: 5, y: 0 })).toEqual({ x: 0, y: 5 });
});

// Source (derived): what the words mean; coordinates up to 400 mm hold about 1e-13.
describe('for any points', () => {
  test('mirroring twice changes nothing', () => {
    fc.assert(
      fc.property(points, points, points, (p, q, r) => {
        fc.pre(distance(p, q) > 1);
        const m = reflectionAcross(p, q);
        expect(distance(applyTo(m, applyTo(m, r)), r)).toBeLessThan(1e-10);
        expect(distance(applyTo(m, p), p)).toBeLessThan(1e-10);
      }),
    );
  });
  test('motions keep distances, and what undoes them does', () => {
    fc.assert(
      fc.property(motions, points, points, (m, p, q) => {
        expect(Math.abs(distance(applyTo(m, p), applyTo(m, q)) - distance(p, q))).toBeLessThan(1e-9);
        expect(distance(applyTo(invert(m), applyTo(m, p)), p)).toBeLessThan(1e-9);
        expect(determinant(m)).toBeCloseTo(1, 12);
      }),
    );
  });
  test('one after the other is their composition', () => {
    fc.assert(
      fc.property(motions, motions, points, (m, n, p) => {
        expect(distance(applyTo(compose(m, n), p), applyTo(m, applyTo(n, p)))).toBeLessThan(1e-9);
      }),
    );
  });
  test('the leg arrives on the line it is turned to, as long as before', () => {
    fc.assert(
      fc.property(points, points, angles, (pivot, from, angle) => {
        const length = distance(pivot, from);
        fc.pre(length > 1);
        const to = applyTo(rotationByAngle(pivot, angle), from);
        expect(distance(applyTo(rotationTaking(pivot, from, to), from), to)).toBeLessThan(1e-9);
      }),
    );
  });
  test('a shift adds', () => {
    expect(applyTo(translation({ x: 1, y: 2 }), { x: 3, y: 4 })).toEqual({ x: 4, y: 6 });
  });
});
