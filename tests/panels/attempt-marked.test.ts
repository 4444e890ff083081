import { expect, test } from 'vitest';
import { firstDivergence } from '../../src/lib/lessons/divergence.ts';
import { variantOf } from '../../src/lib/lessons/drills/variant.ts';
import { workedLesson } from '../../src/lib/lessons/worked/index.ts';
import { markedAttempt } from '../../src/lib/panels/attempt-marked.ts';
import type { Command } from '../../src/lib/recipe/types.ts';
import { attemptOf, lessonOf } from '../lessons/drills/support.ts';

/* A drill of one step is watched from where it begins, and marked with what is given before it. */
const PART = { exercise: 'line', seed: 4711, fabric: 'woven', band: 'usual', hints: 0, step: 4 } as const;
const lesson = lessonOf(variantOf(PART));
const { commands } = workedLesson(lesson, 'woven');
const before = new Set(lesson.given!.map(({ id }) => id));
const given = commands.filter(({ step }) => before.has(step!));

test('what is given is on the table, and only the own commands are watched', () => {
  const marked = markedAttempt(lesson, attemptOf(lesson, commands));
  expect(lesson.given!.map(({ id }) => id)).toEqual(['style-line', 'notches', 'working-dart']);
  expect(marked.given).toBe(given.length);
  expect(marked.commands.map(({ do: name }) => name)).toEqual(['connect']);
  expect(marked.start.lines.map(({ id }) => id)).toEqual(['line']);
  expect(marked.tables).toHaveLength(2);
  expect([...marked.marks].map(([step, { verdict }]) => [step, verdict])).toEqual([
    ['connector', 'accepted'],
  ]);
  expect([...marked.ends]).toEqual([['connector', 1]]);
});

test('a divergence counts from the first command of all, also where what is given was changed in the file', () => {
  const off = commands.map((one): Command =>
    one.do === 'connect' ? { ...one, at: one.at + 0.2, square: false } : one,
  );
  expect(firstDivergence(lesson, attemptOf(lesson, off))).toMatchObject({
    index: given.length,
    step: 'connector',
  });
  // A turn about another point cannot be gone on with.
  const later = lessonOf(variantOf({ ...PART, step: 6 }));
  const bent = workedLesson(later, 'woven').commands.map((one): Command =>
    one.do === 'turn' ? { ...one, about: { on: 'right/waist', at: 0.5 } } : one,
  );
  const found = firstDivergence(later, attemptOf(later, bent))!;
  expect(found.step).toBe('move-along');
  expect(found.index).toBeLessThan(markedAttempt(later, attemptOf(later, bent)).given);
});
