import { describe, expect, it } from 'vitest';
import { toolOf } from '../../src/lib/machines/tools/known.ts';
import { measuresOf } from '../../src/lib/panels/measures.ts';
import { actWords } from '../../src/lib/strings/strip.ts';
import '../../src/lib/strings/tool-words.ts';
import type { Command, CommandName } from '../../src/lib/recipe/types.ts';
import { BUST, TWO_CUTS, TWO_LINES, WAIST, WORKING } from '../machines/dart-tables.ts';
import { tableOf } from '../machines/finish-tables.ts';
import { Hand } from '../machines/hand.ts';

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

  it('tells a numbered dart by its edge too, where it can be chosen', () => {
    const half = { do: 'turn', dart: WAIST, part: 'freed', about: BUST } as const;
    const work = tableOf([
      ...TWO_CUTS,
      { ...half, into: 'slash-1', by: { share: 0.5 } },
      { ...half, into: 'slash-2', by: { until: 'legs-meet' } },
    ]);
    const { scene } = new Hand(work).take('cap').context;
    const words = (tool: CommandName) =>
      toolOf(tool)!.acts!(scene).map(({ id, about }) => actWords(id, about));
    expect(words('fullness')).toEqual([
      'Draw over new dart 1 (right side seam)',
      'Draw over new dart 2 (right shoulder seam)',
    ]);
    expect(words('cap')).toEqual([
      'Cap new dart 1 (right side seam)',
      'Cap new dart 2 (right shoulder seam)',
    ]);
    // One that has a name of its own needs no more.
    const one = tableOf(WORKING);
    expect(toolOf('cap')!.acts!({ ...scene, work: one }).map(({ id, about }) => actWords(id, about))).toEqual(
      ['Cap the right waist dart'],
    );
  });
});
