import { expect, test } from 'vitest';
import {
  add,
  cross,
  distance,
  dot,
  lerp,
  norm,
  perpendicular,
  samePoint,
  scale,
  sub,
  unit,
} from '../../src/lib/geometry/point.ts';

// Source: derived by hand (3-4-5 triangle).
test('a vector without length has no direction', () => {
  expect(() => unit({ x: 0, y: 0 })).toThrow(RangeError);
  expect(() => unit({ x: NaN, y: 0 })).toThrow(RangeError);
});

test('vector arithmetic', () => {
  const p = { x: 3, y: 4 };
  const q = { x: -1, y: 2 };
  expect(add(p, q)).toEqual({ x: 2, y: 6 });
  expect(sub(p, q)).toEqual({ x: 4, y: 2 });
  expect(scale(p, 2)).toEqual({ x: 6, y: 8 });
  expect(dot(p, q)).toBe(5);
  expect(cross(p, q)).toBe(10);
  expect(norm(p)).toBe(5);
  expect(distance({ x: 1, y: 1 }, { x: 4, y: 5 })).toBe(5);
  expect(unit(p)).toEqual({ x: 0.6, y: 0.8 });
});

test('a quarter turn clockwise takes right to down', () => {
  expect(perpendicular({ x: 1, y: 0 })).toEqual({ x: -0, y: 1 });
});

test('a fraction of the way keeps both ends bit for bit', () => {
  const p = { x: 0.1, y: 0.7 };
  const q = { x: 1e17, y: -3.3 };
  expect(samePoint(lerp(p, q, 0), p)).toBe(true);
  expect(samePoint(lerp(p, q, 1), q)).toBe(true);
  expect(samePoint(p, { x: 0.1, y: 0.7000000000000001 })).toBe(false);
});
