import { describe, expect, it } from 'vitest';
import { drillLesson } from '../../src/lib/lessons/drills/lesson.ts';
import { stepNumber, type DrillStepId } from '../../src/lib/lessons/drills/steps.ts';
import { newest, type Drill, type ExerciseId } from '../../src/lib/lessons/drills/types.ts';
import { variantOf } from '../../src/lib/lessons/drills/variant.ts';
import { partSaid } from '../../src/lib/strings/attempt.ts';
import { drillWords } from '../../src/lib/strings/drills.ts';

const lessonOf = (exercise: ExerciseId, step?: DrillStepId, fabric: Drill['fabric'] = 'woven') =>
  drillLesson(
    variantOf(
      newest({
        exercise,
        seed: 41,
        fabric,
        band: 'usual',
        hints: 0,
        ...(step && { step: stepNumber(exercise, step) }),
      }),
    ),
    drillWords('mm'),
  );

describe('the opening of one step of making pieces ready', () => {
  /** A word of what each step asks or has done, in order. */
  const STEPS: readonly (readonly [DrillStepId, done: RegExp, asks: RegExp])[] = [
    ['treat', /leftover is treated/, /bridge the openings/],
    ['allowances', /allowances are added/, /neckline and armholes: /],
    ['label-and-grain', /pieces are labelled/, /draw the grainlines/],
    ['walk-the-seams', /walked/, /Walk the five seams/],
  ];
  for (const fabric of ['woven', 'knit'] as const)
    it.each(STEPS.map(([id], i) => [id, i] as const))(
      `says what is done and what %s asks, and nothing of what comes after it (${fabric})`,
      (id, i) => {
        const { summary } = lessonOf('ready', id, fabric);
        expect(summary).toContain('Done before it: the slanted seam is drawn and cut');
        for (const [j, [, done, asks]] of STEPS.entries()) {
          expect(done.test(summary), `${id} ${done}`).toBe(j < i);
          expect(asks.test(summary), `${id} ${asks}`).toBe(j === i);
        }
      },
    );

  it('treats the leftover without a word of later steps, which the whole drill has', () => {
    const text = (step?: DrillStepId): string => lessonOf('ready', step).steps[0]!.text.join('\n');
    expect(text()).toContain('The steps after this one');
    expect(text('treat')).not.toContain('after this one');
    expect(text()).toContain(text('treat'));
  });
});

it('the first step of a kind has nothing before it, and does not say so', () => {
  expect(lessonOf('line', 'style-line').summary).not.toContain('before it');
  expect(lessonOf('line', 'notches').summary).toContain('What comes before it is done.');
});

describe('an attempt of a part of a drill', () => {
  it('says of which kind and step it is, and what was given', () => {
    expect(partSaid('Back off, true and cap', ['Draw the sewn point'], ['Cap the dart'], true)).toBe(
      'One step of a drill, “Cap the dart”. Its kind: Back off, true and cap. ' +
        'Given before it, and not the work of whoever made the attempt: “Draw the sewn point”.',
    );
    expect(partSaid('A line', ['Draw it'], ['Notch it'], true, false)).toMatch(
      /What stands before it \(“Draw it”\) is not what the drill gives/,
    );
    expect(partSaid('A line', [], ['Draw it'], true)).toMatch(/Nothing was given before it\.$/);
  });
  it('says of several steps what was given before them, and of a whole drill nothing', () => {
    expect(partSaid('Pieces', ['Open out', 'Separate'], ['Treat', 'Walk'], false)).toBe(
      'A drill of the kind: Pieces. Given before it, and not the work of whoever made the attempt: “Open out”, “Separate”.',
    );
    expect(partSaid('A line', [], ['Draw it', 'Notch it'], false)).toBeUndefined();
  });
});
