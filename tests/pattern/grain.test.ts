import { describe, expect, it } from 'vitest';
import { compose, IDENTITY, rotationByAngle } from '../../src/lib/geometry/isometry.ts';
import { distance } from '../../src/lib/geometry/point.ts';
import { grainDirection, setGrain } from '../../src/lib/pattern/grain.ts';
import { setLabel } from '../../src/lib/pattern/label.ts';
import { handMade } from './hand-made.ts';
import { ok, refusal } from './ok.ts';

const { lower } = handMade();

describe('setGrain', () => {
  it('draws along the centre front of the part that keeps the grain, from top to bottom', () => {
    const line = ok(setGrain(lower, { x: 10, y: 60 }, 0)).grainline!;
    expect(line.from).toEqual({ x: 10, y: -15 });
    expect(line.to).toEqual({ x: 10, y: 135 });
  });

  it('ignores parts whose grain is void, and turns with the piece', () => {
    const [part] = lower.parts;
    const turned = { ...part!, grain: 'void' as const, motion: rotationByAngle({ x: 0, y: 0 }, 0.3) };
    expect(grainDirection({ ...lower, parts: [turned, part!] })).toEqual({ x: 0, y: 1 });
    const moved = { ...part!, motion: compose(rotationByAngle({ x: 5, y: 5 }, 0.2), IDENTITY) };
    const way = grainDirection({ ...lower, parts: [moved] });
    expect(way.x).toBeCloseTo(-Math.sin(0.2), 12);
    expect(way.y).toBeCloseTo(Math.cos(0.2), 12);
  });

  it('takes an angle off it, clockwise, and a length', () => {
    const line = ok(setGrain(lower, { x: 0, y: 0 }, Math.PI / 4, 100)).grainline!;
    expect(distance(line.from, line.to)).toBeCloseTo(100, 9);
    // Clockwise from "down" is towards the viewer's left.
    expect(line.to.x).toBeCloseTo(-50 * Math.SQRT1_2, 9);
    expect(line.to.y).toBeCloseTo(50 * Math.SQRT1_2, 9);
  });

  it('refuses numbers that are none', () => {
    expect(refusal(setGrain(lower, { x: 0, y: 0 }, NaN))).toBe('bad-number');
    expect(refusal(setGrain(lower, { x: 0, y: 0 }, 0, 0))).toBe('bad-number');
  });
});

describe('setLabel', () => {
  it('writes the label, and refuses a count that cannot be cut', () => {
    const label = { name: 'lower front', cut: 1, rightSideUp: true };
    expect(ok(setLabel(lower, label)).label).toEqual(label);
    for (const cut of [0, -1, 1.5, NaN])
      expect(refusal(setLabel(lower, { ...label, cut }))).toBe('bad-count');
  });
});
