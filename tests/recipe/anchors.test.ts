import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance } from '../../src/lib/geometry/point.ts';
import type { Point } from '../../src/lib/geometry/types.ts';
import {
  anchorInside,
  anchorOn,
  anchorPolygon,
  NEAR_BUST,
  resolveAnchor,
} from '../../src/lib/recipe/anchors.ts';
import { replay } from '../../src/lib/recipe/replay.ts';
import { snap } from '../../src/lib/recipe/snap.ts';
import type { Work } from '../../src/lib/recipe/types.ts';
import { landmark, sampleAttempt } from './sample.ts';
import { real } from '../support/real.ts';

const opened = replay(sampleAttempt('F3', 'knit', { upTo: 'open-out' })).work;
const drawn = replay(sampleAttempt('F3', 'knit', { upTo: 'connectors' })).work;
const parted = replay(sampleAttempt('F3', 'knit', { upTo: 'separate' })).work;

/** A point in the box round the polygon of a piece. */
const pointBy = (work: Work, piece: string) => {
  const polygon = anchorPolygon(work, piece);
  const x = polygon.map((p) => p.x);
  const y = polygon.map((p) => p.y);
  const from = { x: Math.min(...x), y: Math.min(...y) };
  const to = { x: Math.max(...x), y: Math.max(...y) };
  const part = real(0, 1);
  return fc.tuple(part, part).map(([u, w]): Point => ({
    x: from.x + u * (to.x - from.x),
    y: from.y + w * (to.y - from.y),
  }));
};

describe('anchors', () => {
  it('inside a piece give back the point they were made from (mean value coordinates have linear precision: Floater 2003)', () => {
    for (const [work, piece] of [
      [opened, 'front'],
      [parted, 'upper'],
      [parted, 'lower'],
      [parted, 'back'],
    ] as const)
      fc.assert(
        fc.property(pointBy(work, piece), (point) => {
          const back = resolveAnchor(work, anchorInside(work, piece, point), piece)!;
          expect(distance(back, point)).toBeLessThan(1e-6);
        }),
      );
  });

  it('near a bust point are offsets from it, and keep their distance on every body', () => {
    const b = landmark(opened, 'left/bust-point');
    const anchor = anchorInside(opened, 'front', { x: b.x + 3, y: b.y + 17 });
    expect(anchor).toMatchObject({ landmark: 'left/bust-point' });
    const far = anchorInside(opened, 'front', { x: b.x, y: b.y + NEAR_BUST + 1 });
    expect(far).toHaveProperty('weights');
    const other = replay(sampleAttempt('F5', 'knit', { upTo: 'open-out' })).work;
    const there = resolveAnchor(other, anchor)!;
    expect(distance(there, landmark(other, 'left/bust-point'))).toBeCloseTo(Math.sqrt(9 + 289), 9);
  });

  it('on an edge are fractions of its arc length, clamped to it', () => {
    for (const at of [0, 0.25, 0.9, 1]) {
      const point = resolveAnchor(opened, { on: 'right/armhole', at })!;
      expect(anchorOn(opened, 'right/armhole', point)).toMatchObject({ at: expect.closeTo(at, 9) as number });
    }
    expect(() => anchorOn(opened, 'no/edge', { x: 0, y: 0 })).toThrow(RangeError);
  });

  it('of what is not there are nowhere, and no name that every object has is taken for a landmark', () => {
    expect(resolveAnchor(opened, { on: 'no/edge', at: 0.5 })).toBeUndefined();
    expect(resolveAnchor(opened, { landmark: 'no-landmark' })).toBeUndefined();
    for (const name of ['__proto__', 'constructor', 'toString'])
      expect(resolveAnchor(opened, { landmark: name })).toBeUndefined();
    expect(resolveAnchor(opened, { inside: 'front', weights: [0.5, 0.25, 0.25] })).toBeUndefined();
    expect(resolveAnchor(opened, { inside: 'sleeve', weights: [0.5, 0.25, 0.25] })).toBeUndefined();
  });
});

describe('snap', () => {
  const all = ['landmark', 'edge', 'line'] as const;

  it('goes to a landmark before a line, to a line before an edge', () => {
    const corner = landmark(drawn, 'right/neck-point');
    expect(snap(drawn, { x: corner.x + 1, y: corner.y + 2 }, 5, all)).toMatchObject({
      snapped: 'landmark',
      id: 'right/neck-point',
      point: corner,
    });
    const end = drawn.lines[0]!.points[0]!;
    expect(snap(drawn, { x: end.x, y: end.y + 1 }, 5, all)).toMatchObject({ snapped: 'line', id: 'line' });
    expect(snap(drawn, { x: end.x, y: end.y + 1 }, 5, ['edge'])).toMatchObject({
      snapped: 'edge',
      id: 'right/shoulder',
    });
  });

  it('stays where it is when nothing is within reach, and its anchor leads back to the point', () => {
    fc.assert(
      fc.property(pointBy(drawn, 'front'), real(0, 40), (point, reach) => {
        const to = snap(drawn, point, reach, all);
        expect(distance(resolveAnchor(drawn, to.anchor)!, to.point)).toBeLessThan(1e-6);
        if (to.snapped === 'none') expect(to.point).toEqual(point);
        else expect(distance(to.point, point)).toBeLessThanOrEqual(reach);
      }),
    );
  });

  it('refuses a piece that is not on the table', () => {
    expect(() => snap(drawn, { x: 0, y: 0 }, 5, all, 'sleeve')).toThrow(RangeError);
  });
});
