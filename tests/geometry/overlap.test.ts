import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Chain, Point } from '../../src/lib/geometry/types.ts';
import { distance } from '../../src/lib/geometry/point.ts';
import { between, cubic, line, pointAt } from '../../src/lib/geometry/segment.ts';
import { chainLength } from '../../src/lib/geometry/chain.ts';
import { reverseChain } from '../../src/lib/geometry/chain-moved.ts';
import { subchain } from '../../src/lib/geometry/subchain.ts';
import { overlaps } from '../../src/lib/geometry/intersect.ts';
import { sharedStretch } from '../../src/lib/geometry/overlap.ts';
import { chains } from './arbitrary.ts';

const p = (x: number, y: number): Point => ({ x, y });
const arch = cubic(p(0, 0), p(0, 40), p(60, 40), p(60, 0));

// Source: derived; what the words mean.
describe('no stretch in common', () => {
  test('a touch is not a stretch', () => {
    expect(sharedStretch(line(p(0, 0), p(10, 0)), line(p(10, 0), p(20, 0)))).toBeUndefined();
    expect(sharedStretch(arch, line(p(0, 30), p(60, 30)))).toBeUndefined();
  });
  test('curves with both ends in common need not be one curve', () => {
    expect(sharedStretch(arch, cubic(p(0, 0), p(0, 41), p(60, 40), p(60, 0)))).toBeUndefined();
    expect(sharedStretch(arch, line(p(0, 0), p(60, 0)))).toBeUndefined();
  });
  test('empty chains share nothing', () => {
    expect(overlaps([], [arch])).toEqual([]);
  });
});

test('a part of a curve lies on it where it was cut', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 800 }), fc.integer({ min: 10, max: 190 }), (from, span) => {
      const [t0, t1] = [from / 1000, (from + span) / 1000];
      const part = between(arch, t0, t1);
      const shared = sharedStretch(arch, part)!;
      expect(Math.abs(shared.t0 - t0)).toBeLessThan(1e-8);
      expect(Math.abs(shared.t1 - t1)).toBeLessThan(1e-8);
      expect([shared.u0, shared.u1]).toEqual([0, 1]);
      for (let i = 0; i <= 8; i++) {
        const t = shared.t0 + ((shared.t1 - shared.t0) * i) / 8;
        expect(distance(pointAt(arch, t), pointAt(part, i / 8))).toBeLessThan(1e-6);
      }
    }),
  );
});

test('a part of a chain overlaps it by its whole length, forwards and backwards', () => {
  fc.assert(
    fc.property(chains, fc.integer({ min: 0, max: 70 }), fc.integer({ min: 5, max: 30 }), (c, from, span) => {
      const whole = chainLength(c);
      const part = subchain(c, (from / 100) * whole, ((from + span) / 100) * whole);
      const total = (k: Chain): number =>
        overlaps(c, k).reduce((sum, { a }) => sum + (a[1].length - a[0].length), 0);
      expect(Math.abs(total(part) - chainLength(part))).toBeLessThan(1e-5);
      expect(Math.abs(total(reverseChain(part)) - chainLength(part))).toBeLessThan(1e-5);
    }),
  );
});

test('places on the second chain run backwards when it does', () => {
  const [o] = overlaps([line(p(0, 0), p(100, 0))], [line(p(80, 0), p(20, 0))]);
  expect(o!.a.map((x) => x.length)).toEqual([20, 80]);
  expect(o!.b.map((x) => x.length)).toEqual([60, 0]);
});
