import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Chain } from '../../src/lib/geometry/types.ts';
import { distance, samePoint } from '../../src/lib/geometry/point.ts';
import { cubic, line } from '../../src/lib/geometry/segment.ts';
import {
  chainBounds,
  chainEnd,
  chainLength,
  chainStart,
  placeAtLength,
  pointAtLength,
  tangentAtLength,
} from '../../src/lib/geometry/chain.ts';
import { polyline } from '../../src/lib/geometry/polyline.ts';
import { reverseChain, transformChain } from '../../src/lib/geometry/chain-moved.ts';
import { splitChain, subchain } from '../../src/lib/geometry/subchain.ts';
import { nearestOnChain } from '../../src/lib/geometry/nearest.ts';
import { chains, motions } from './arbitrary.ts';

const p = (x: number, y: number): { x: number; y: number } => ({ x, y });
/** 30 along, 40 down, and a quarter of a round. */
const bent: Chain = [
  line(p(0, 0), p(30, 0)),
  line(p(30, 0), p(30, 40)),
  cubic(p(30, 40), p(30, 95.228), p(74.772, 140), p(130, 140)),
];
const fractions = fc.integer({ min: 1, max: 999 }).map((n) => n / 1000);
const joined = (c: Chain): boolean => c.every((s, i) => i === 0 || samePoint(c[i - 1]!.d, s.a));

describe('degenerate chains', () => {
  test('an empty chain has no start, no end and no places', () => {
    expect(() => chainStart([])).toThrow(RangeError);
    expect(() => chainEnd([])).toThrow(RangeError);
    expect(() => placeAtLength([], 1)).toThrow(RangeError);
    expect(() => chainBounds([])).toThrow(RangeError);
    expect(chainLength([])).toBe(0);
  });
  test('lengths off the chain give its ends', () => {
    expect(placeAtLength(bent, -5)).toEqual({ segment: 0, t: 0, length: 0, point: p(0, 0) });
    const end = placeAtLength(bent, 1e9);
    expect([end.segment, end.t, end.length]).toEqual([2, 1, chainLength(bent)]);
    expect(end.point).toBe(bent[2]!.d);
  });
  test('nothing can be cut off at the ends, and nothing lies between equal lengths', () => {
    expect(() => splitChain(bent, 0)).toThrow(RangeError);
    expect(() => splitChain(bent, chainLength(bent))).toThrow(RangeError);
    expect(() => subchain(bent, 20, 20)).toThrow(RangeError);
    expect(() => subchain(bent, 30, 10)).toThrow(RangeError);
  });
  test('a cut at a joint makes no sliver', () => {
    for (const mm of [30, 30 + 4e-10, 30 - 4e-10]) {
      const [first, rest] = splitChain(bent, mm);
      expect(first).toEqual([bent[0]]);
      expect(rest).toEqual([bent[1], bent[2]]);
    }
  });
});

// Source: derived by hand from the two straight legs.
test('places are found along the bend', () => {
  expect(pointAtLength(bent, 15)).toEqual(p(15, 0));
  expect(pointAtLength(bent, 50)).toEqual(p(30, 20));
  expect(placeAtLength(bent, 30)).toEqual({ segment: 1, t: 0, length: 30, point: p(30, 0) });
  expect(tangentAtLength(bent, 10)).toEqual(p(1, 0));
  expect(tangentAtLength(bent, 30)).toEqual(p(0, 1));
});

test('the whole as a part keeps its ends bit for bit, and so does a part', () => {
  const whole = subchain(bent, 0, chainLength(bent));
  expect(whole).toEqual(bent);
  const part = subchain(bent, 10, 60);
  expect(part).toEqual([line(p(10, 0), p(30, 0)), line(p(30, 0), p(30, 30))]);
});

// Source (derived): what the words mean.
describe('for any chain', () => {
  test('cutting changes no length and shares the very point', () => {
    fc.assert(
      fc.property(chains, fractions, (c, f) => {
        const whole = chainLength(c);
        const [first, rest] = splitChain(c, f * whole);
        expect(Math.abs(chainLength(first) - f * whole)).toBeLessThan(1e-9);
        expect(Math.abs(chainLength(first) + chainLength(rest) - whole)).toBeLessThan(1e-10);
        expect(samePoint(chainEnd(first), chainStart(rest))).toBe(true);
        expect(samePoint(chainEnd(first), pointAtLength(c, f * whole))).toBe(true);
        expect(samePoint(chainStart(first), chainStart(c))).toBe(true);
        expect(samePoint(chainEnd(rest), chainEnd(c))).toBe(true);
        expect(joined(first) && joined(rest)).toBe(true);
      }),
    );
  });
  test('a part is as long as asked and starts where it should', () => {
    fc.assert(
      fc.property(chains, fractions, fractions, (c, f, g) => {
        const whole = chainLength(c);
        const from = Math.min(f, g) * whole;
        const to = Math.max(f, g) * whole;
        fc.pre(to - from > 1e-3);
        const part = subchain(c, from, to);
        expect(Math.abs(chainLength(part) - (to - from))).toBeLessThan(1e-9);
        expect(samePoint(chainStart(part), pointAtLength(c, from))).toBe(true);
        expect(samePoint(chainEnd(part), pointAtLength(c, to))).toBe(true);
        expect(joined(part)).toBe(true);
      }),
    );
  });
  test('moving keeps lengths to 1e-9 and joints to the bit', () => {
    fc.assert(
      fc.property(chains, motions, (c, m) => {
        const moved = transformChain(c, m);
        expect(Math.abs(chainLength(moved) - chainLength(c))).toBeLessThan(1e-9);
        expect(joined(moved)).toBe(true);
      }),
    );
  });
  test('run backwards, a place is as far from the other end', () => {
    fc.assert(
      fc.property(chains, fractions, (c, f) => {
        const whole = chainLength(c);
        const back = reverseChain(c);
        expect(joined(back)).toBe(true);
        expect(distance(pointAtLength(back, (1 - f) * whole), pointAtLength(c, f * whole))).toBeLessThan(
          1e-9,
        );
      }),
    );
  });
  test('a drawing of it strays no more than allowed, and its box holds it', () => {
    fc.assert(
      fc.property(chains, (c) => {
        const drawn = polyline(c, 0.1);
        const lines = drawn.slice(1).map((q, i) => line(drawn[i]!, q));
        const box = chainBounds(c);
        const whole = chainLength(c);
        for (let i = 0; i <= 50; i++) {
          const q = pointAtLength(c, (whole * i) / 50);
          expect(nearestOnChain(lines, q).distance).toBeLessThanOrEqual(0.1);
          expect(q.x >= box.minX - 1e-10 && q.x <= box.maxX + 1e-10).toBe(true);
          expect(q.y >= box.minY - 1e-10 && q.y <= box.maxY + 1e-10).toBe(true);
        }
      }),
    );
  });
});
