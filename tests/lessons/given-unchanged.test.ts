import { describe, expect, it } from 'vitest';
import { newest, type ExerciseId } from '../../src/lib/lessons/drills/types.ts';
import { variantOf } from '../../src/lib/lessons/drills/variant.ts';
import { givenUnchanged } from '../../src/lib/lessons/given-unchanged.ts';
import { workedLesson } from '../../src/lib/lessons/worked/index.ts';
import { parseAttempt } from '../../src/lib/recipe/parse.ts';
import { toText } from '../../src/lib/recipe/save.ts';
import type { Attempt, Command } from '../../src/lib/recipe/types.ts';
import { attemptOf, lessonOf } from './drills/support.ts';

// What a drill gives is this project's own; the source of these expectations is its design.
const cases: readonly (readonly [ExerciseId, number])[] = [
  ['line', 4],
  ['finish', 5],
  ['ready', 3],
];

describe.each(cases)('what the drill %s gives before its step %d', (exercise, step) => {
  const lesson = lessonOf(
    variantOf(newest({ exercise, seed: 41, fabric: 'woven', band: 'usual', hints: 0, step })),
  );
  const attempt = attemptOf(lesson, workedLesson(lesson, 'woven').commands);
  const given = lesson.given!.map(({ id }) => id);
  const isGiven = ({ step: of }: Command): boolean => given.includes(of!);
  const changed = (commands: readonly Command[]): Attempt => ({ ...attempt, commands });

  it('is known again, from a file too, whatever is done in the step itself', () => {
    expect(givenUnchanged(lesson, attempt)).toBe(true);
    const read = parseAttempt(toText(attempt));
    expect(givenUnchanged(lesson, (read as { ok: Attempt }).ok)).toBe(true);
    expect(givenUnchanged(lesson, changed(attempt.commands.filter(isGiven)))).toBe(true);
  });
  it('is not what it was when one command is another, or is left out, or all are', () => {
    const first = attempt.commands.findIndex(isGiven);
    const other = { ...attempt.commands[first]!, other: 1 } as unknown as Command;
    expect(givenUnchanged(lesson, changed(attempt.commands.with(first, other)))).toBe(false);
    expect(givenUnchanged(lesson, changed(attempt.commands.toSpliced(first, 1)))).toBe(false);
    expect(givenUnchanged(lesson, changed(attempt.commands.filter((one) => !isGiven(one))))).toBe(false);
  });
  it('is not judged by the rules of another version', () => {
    const older = { ...changed([]), lesson: { ...attempt.lesson!, content: 0 } } as Attempt;
    expect(givenUnchanged(lesson, older)).toBe(true);
  });
});
