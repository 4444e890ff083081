import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { radians } from '../../src/lib/geometry/trig.ts';
import { openings, seamExcess } from '../../src/lib/pattern/openings.ts';
import { handMade, PLAIN } from './hand-made.ts';
import { real } from '../support/real.ts';

describe('openings', () => {
  it('finds the one opening of each piece where its connector met the line', () => {
    const { upper, lower, feet } = handMade();
    const [low] = openings(lower);
    const [up] = openings(upper);
    expect(openings(lower)).toHaveLength(1);
    expect(openings(upper)).toHaveLength(1);
    expect(low).toMatchObject({ dart: 'right' });
    expect(up).toMatchObject({ dart: 'left' });
    expect(low!.at).toBeCloseTo(feet[0], 9);
    expect(up!.at).toBeCloseTo(feet[1], 9);
  });

  it('finds none in a piece without a cut line', () => {
    const { lower } = handMade();
    const edges = lower.parts[0]!.edges.filter((e) => e.role !== 'style-line');
    expect(openings({ ...lower, parts: [{ ...lower.parts[0]!, edges }] })).toEqual([]);
  });

  // Outside check: leftover fullness e = 2 d sin(θ/2); derived figures in the project's trade notes.
  it.each([
    [25.4, 30, 13.15],
    [20, 28, 9.677],
    [25.4, 15, 6.63],
    [1e-6, 28, 0],
  ])('measures on the cut edges, at %d mm from the bust point and %d degrees, %d mm', (d, degrees, e) => {
    const { upper, lower } = handMade({ ...PLAIN, d1: d, d2: d, angle: radians(degrees) });
    expect(openings(lower)[0]!.width).toBeCloseTo(e, 2);
    expect(openings(upper)[0]!.width).toBeCloseTo(e, 2);
  });

  it('spanned straight, the excess over the partner is the width (property)', () => {
    fc.assert(
      fc.property(
        fc.record({
          angle: real(0.15, 0.5),
          d1: real(5, 26),
          d2: real(5, 26),
          sway: real(-10, 20),
        }),
        (numbers) => {
          const { upper, lower } = handMade(numbers);
          // Derived: the chord of a turn by θ at distance d, with the host's own sine.
          const e1 = 2 * numbers.d1 * Math.sin(numbers.angle / 2);
          const e2 = 2 * numbers.d2 * Math.sin(numbers.angle / 2);
          expect(openings(lower, upper)[0]!.width).toBeCloseTo(e1, 9);
          expect(openings(lower, upper)[0]!.excess).toBeCloseTo(e1, 9);
          expect(openings(upper, lower)[0]!.excess).toBeCloseTo(e2, 9);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('cannot tell the two openings apart without a mark between them', () => {
    const { upper, lower } = handMade();
    const bare = { ...lower, notches: [] };
    // The interval joints still part them ...
    expect(seamExcess(bare, { ...upper, notches: [] }, 'right')).toBeUndefined();
    // ... and with the notches it is plain.
    expect(seamExcess(lower, upper, 'right')).toBeCloseTo(openings(lower)[0]!.width, 9);
  });
});
