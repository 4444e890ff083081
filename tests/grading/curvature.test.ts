import { describe, expect, it } from 'vitest';
import { cubic, line } from '../../src/lib/geometry/segment.ts';
import { largestDrop, sharpestJoint, tightest } from '../../src/lib/grading/curvature.ts';

const p = (x: number, y: number) => ({ x, y });
/** The usual cubic for a quarter circle (handle 0.5523 r), whose curvature is that of the circle within 1 % (common practice). */
const quarter = (r: number) => cubic(p(r, 0), p(r, 0.5523 * r), p(0.5523 * r, r), p(0, r));

describe('the tightest bend', () => {
  it('of a straight line is none', () => expect(tightest([line(p(0, 0), p(9, 4))]).radius).toBe(Infinity));

  it.each([12, 50, 300])('of a quarter circle of %i mm is its radius within 1 %%', (r) => {
    expect(tightest([quarter(r)]).radius / r).toBeGreaterThan(0.99);
    expect(tightest([quarter(r)]).radius / r).toBeLessThan(1.01);
  });

  it('of several is the smallest, at its place', () => {
    const { radius, at } = tightest([line(p(90, 0), p(30, 0)), quarter(30), line(p(0, 30), p(-9, 30))]);
    expect(Math.abs(radius - 30)).toBeLessThan(0.3);
    expect(Math.hypot(at.x, at.y)).toBeCloseTo(30, 1);
  });
});

it('the sharpest joint is the largest turn between two segments', () => {
  const chain = [line(p(0, 0), p(10, 0)), line(p(10, 0), p(20, 1)), line(p(20, 1), p(20, 11))];
  const { angle, at } = sharpestJoint(chain);
  expect(angle).toBeCloseTo(Math.PI / 2 - Math.atan2(1, 10), 9);
  expect(at).toEqual(p(20, 1));
  expect(sharpestJoint([chain[0]!]).angle).toBe(0);
});

describe('how far a chain comes back', () => {
  const centre = p(0, 0);
  const start = { segment: 0, t: 0 };
  it('is nothing where the distance only grows', () => {
    expect(largestDrop([line(p(10, 0), p(40, 5)), line(p(40, 5), p(90, -5))], start, centre).drop).toBe(0);
  });
  it('is the difference between the farthest and the nearest place after it', () => {
    const chain = [line(p(10, 0), p(50, 0)), line(p(50, 0), p(30, 0)), line(p(30, 0), p(200, 0))];
    const { drop, from, to } = largestDrop(chain, start, centre);
    expect(drop).toBeCloseTo(20, 9);
    expect(from).toEqual(p(50, 0));
    expect(to).toEqual(p(30, 0));
  });
  it('is looked for from the given place on', () => {
    const chain = [line(p(50, 0), p(10, 0)), line(p(10, 0), p(60, 0))];
    expect(largestDrop(chain, start, centre).drop).toBeCloseTo(40, 9);
    expect(largestDrop(chain, { segment: 1, t: 0 }, centre).drop).toBe(0);
  });
});
