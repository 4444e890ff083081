import { describe, expect, it } from 'vitest';
import { measuresOf } from '../../src/lib/panels/measures.ts';
import type { Command } from '../../src/lib/recipe/types.ts';
import { BUST, TWO_CUTS, TWO_LINES, WAIST } from '../machines/dart-tables.ts';
import { tableOf } from '../machines/finish-tables.ts';

/** What is told under a heading. */
function told(commands: readonly Command[], title: string): Record<string, string> {
  const front = tableOf(commands).pieces.find(({ id }) => id === 'front')!;
  const group = measuresOf(front, 'mm').find((one) => one.title === title);
  return Object.fromEntries((group?.measures ?? []).map(({ label, value }) => [label, value]));
}
const numbers = (text: string): number[] => [...text.matchAll(/[\d.]+/g)].map(Number);

describe('the table in words', () => {
  it('tells where a slash line begins and ends', () => {
    const { 'slash 1': one, 'slash 2': two } = told(TWO_LINES, 'Lines');
    expect(one).toMatch(
      /^[\d.]+ mm, from the right side seam, [\d.]+ mm from the [a-z ]+, to the right bust point$/,
    );
    expect(two).toMatch(/from the right shoulder seam/);
  });

  it('tells how far a dart is open, how wide and how long its legs are', () => {
    expect(told(TWO_CUTS, 'Darts')['slash 1']).toMatch(/^cut, nothing turned into it, legs [\d.]+ mm long$/);
    const turned = [
      ...TWO_CUTS,
      { do: 'turn', dart: WAIST, into: 'slash-1', part: 'freed', about: BUST, by: { share: 0.5 } },
    ] as const;
    const darts = told(turned, 'Darts');
    // 2 L sin(angle / 2), trade notes, derived; the words give a tenth of a degree, 0.1 mm.
    const [angle, wide, leg] = numbers(darts['new dart 1']!);
    expect(Math.abs(wide! - 2 * leg! * Math.sin((angle! * Math.PI) / 360))).toBeLessThan(0.25);
    expect(numbers(darts['right waist dart']!)[0]).toBeCloseTo(angle!, 1);
    const closed = told(
      [
        ...turned,
        { do: 'turn', dart: WAIST, into: 'slash-2', part: 'freed', about: BUST, by: { until: 'legs-meet' } },
      ],
      'Darts',
    );
    expect(closed['right waist dart']).toBe('closed, its legs meet');
    expect(closed['new dart 2']).toMatch(/^working, 9\.\d° open/);
  });
});
