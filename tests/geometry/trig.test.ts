import { describe, expect, test } from 'vitest';
import { acos, angleBetween, asin, atan2, cos, degrees, radians, sin } from '../../src/lib/geometry/trig.ts';
import fixed from './data/trig.json' with { type: 'json' };

// Source (derived): mpmath at 40 digits, made once (data/trig.json says how). One ulp at 1 is 2.2e-16, at 3 it is 4.4e-16.
const close = (got: number, want: string, ulps = 1): void => {
  const value = Number(want);
  expect(Math.abs(got - value)).toBeLessThanOrEqual(ulps * Math.max(2.3e-16 * Math.abs(value), 1e-320));
};

describe('own sine and cosine', () => {
  test('are exact where the answer is', () => {
    expect(sin(0)).toBe(0);
    expect(cos(0)).toBe(1);
    expect(sin(NaN)).toBeNaN();
  });
  test.each(fixed.sin_cos as [number, string, string][])('agree with mpmath at %f', (x, s, c) => {
    // Near a zero of sin or cos the reduced angle itself is rounded: allow 1e-16 there beside the relative 2.3e-16.
    expect(Math.abs(sin(x) - Number(s))).toBeLessThanOrEqual(
      Math.max(2.3e-16 * Math.abs(Number(s)), 1.2e-16 * Math.min(1, Math.abs(x))),
    );
    expect(Math.abs(cos(x) - Number(c))).toBeLessThanOrEqual(
      Math.max(2.3e-16 * Math.abs(Number(c)), 1.2e-16),
    );
  });
  // Source (derived): the engine's own functions, which keep below one ulp.
  test('stay within 2.3e-16 of the engine over 40,000 angles', () => {
    let worst = 0;
    for (let i = -20000; i <= 20000; i++) {
      const x = i / 1987;
      worst = Math.max(worst, Math.abs(sin(x) - Math.sin(x)), Math.abs(cos(x) - Math.cos(x)));
    }
    expect(worst).toBeLessThanOrEqual(2.3e-16);
  });
});

describe('own arc functions', () => {
  test('have the ends of their ranges', () => {
    expect(atan2(0, 0)).toBe(0);
    expect(atan2(0, -1)).toBe(Math.PI);
    expect(atan2(-1e-300, -1)).toBe(-Math.PI);
    expect(acos(1)).toBe(0);
    expect(acos(-1)).toBe(Math.PI);
    expect(acos(1.0001)).toBeNaN();
  });
  test.each(fixed.atan2 as [number, number, string][])('atan2(%f, %f) agrees with mpmath', (y, x, want) => {
    close(atan2(y, x), want);
  });
  test.each(fixed.acos_asin as [number, string, string][])(
    'acos and asin of %f agree with mpmath',
    (v, a, s) => {
      close(acos(v), a, 2);
      close(asin(v), s, 2);
    },
  );
  test('stay within 4.5e-16 of the engine over 40,000 vectors', () => {
    let worst = 0;
    for (let i = 0; i < 40000; i++) {
      const y = Math.sin(i) * 300;
      const x = Math.cos(i * 1.7) * 200;
      worst = Math.max(worst, Math.abs(atan2(y, x) - Math.atan2(y, x)));
    }
    expect(worst).toBeLessThanOrEqual(4.5e-16);
  });
});

// Source: derived. With y down, the y axis lies a quarter turn clockwise from the x axis.
test('angles between directions are positive clockwise on the screen', () => {
  expect(angleBetween({ x: 1, y: 0 }, { x: 0, y: 2 })).toBe(Math.PI / 2);
  expect(angleBetween({ x: 0, y: 2 }, { x: 1, y: 0 })).toBe(-Math.PI / 2);
  expect(angleBetween({ x: 1, y: 0 }, { x: -3, y: 0 })).toBe(Math.PI);
  expect(degrees(radians(30))).toBeCloseTo(30, 13);
});
