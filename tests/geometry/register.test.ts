import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Point } from '../../src/lib/geometry/types.ts';
import { distance } from '../../src/lib/geometry/point.ts';
import { applyTo, determinant, reflectionAcross, rotationByAngle } from '../../src/lib/geometry/isometry.ts';
import { register } from '../../src/lib/geometry/register.ts';
import { motions, points } from './arbitrary.ts';

const p = (x: number, y: number): Point => ({ x, y });
const hook = [p(0, 0), p(0, 300), p(80, 300), p(80, 280), p(40, 120)];
const clouds = fc.array(points, { minLength: 3, maxLength: 12 });

describe('degenerate registration', () => {
  test('nothing, or different counts, cannot be laid on each other', () => {
    expect(() => register([], [])).toThrow(RangeError);
    expect(() => register([p(0, 0)], [p(0, 0), p(1, 1)])).toThrow(RangeError);
  });
  test('single points, and points all in one place, are moved without a turn', () => {
    expect(register([p(1, 2)], [p(4, 6)])).toEqual({
      motion: { a: 1, b: 0, c: -0, d: 1, e: 3, f: 4 },
      residual: 0,
      mirrored: false,
    });
    const same = register([p(1, 1), p(1, 1)], [p(0, 0), p(2, 0)]);
    expect([same.motion.a, same.motion.b, same.residual]).toEqual([1, 0, 1]);
  });
  test('points in a row fit as well either way round, so are not called mirrored', () => {
    expect(register([p(0, 0), p(5, 0), p(9, 0)], [p(0, 0), p(0, 5), p(0, 9)]).mirrored).toBe(false);
  });
});

// Source (derived): what the words mean.
test('a moved shape gives back its motion, half turns included', () => {
  fc.assert(
    fc.property(clouds, motions, (cloud, m) => {
      const spread = Math.max(...cloud.map((q) => distance(q, cloud[0]!)));
      fc.pre(spread > 1);
      const { motion, residual, mirrored } = register(
        cloud,
        cloud.map((q) => applyTo(m, q)),
      );
      expect(residual).toBeLessThan(1e-9);
      expect(mirrored).toBe(false);
      expect(determinant(motion)).toBeCloseTo(1, 12);
      for (const q of cloud) expect(distance(applyTo(motion, q), applyTo(m, q))).toBeLessThan(1e-9);
    }),
  );
  const half = rotationByAngle(p(3, 4), Math.PI);
  expect(
    register(
      hook,
      hook.map((q) => applyTo(half, q)),
    ).residual,
  ).toBeLessThan(1e-12);
});

test('a mirror image is called one, and is never fitted by mirroring', () => {
  const mirror = reflectionAcross(p(0, 0), p(30, 100));
  const { motion, residual, mirrored } = register(
    hook,
    hook.map((q) => applyTo(mirror, q)),
  );
  expect(mirrored).toBe(true);
  expect(determinant(motion)).toBeCloseTo(1, 12);
  expect(residual).toBeGreaterThan(10);
});

// Source (derived): what least squares means: no other small turn or shift fits better.
test('no motion near the answer fits better', () => {
  const bent = hook.map((q, i) => p(q.x + 3 * Math.sin(i * 7), q.y + 3 * Math.cos(i * 5)));
  const { motion, residual } = register(hook, bent);
  const rms = (shift: Point, angle: number): number => {
    const turn = rotationByAngle(p(0, 0), angle);
    let sum = 0;
    hook.forEach((q, i) => {
      const r = applyTo(turn, applyTo(motion, q));
      sum += distance(p(r.x + shift.x, r.y + shift.y), bent[i]!) ** 2;
    });
    return Math.sqrt(sum / hook.length);
  };
  expect(rms(p(0, 0), 0)).toBeCloseTo(residual, 12);
  for (const dx of [-0.01, 0, 0.01])
    for (const dy of [-0.01, 0, 0.01])
      for (const angle of [-1e-4, 0, 1e-4])
        expect(rms(p(dx, dy), angle)).toBeGreaterThanOrEqual(residual - 1e-12);
});
