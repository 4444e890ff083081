import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { LESSONS, lessonIds, loadLesson, stepFolders } from '../../src/cli/load-lessons.ts';
import { lookForCause } from '../../src/lib/grading/causes/diagnose.ts';
import { gradeStep } from '../../src/lib/grading/grade.ts';
import { isDetermined, ownRightWay } from '../../src/lib/lessons/causes/right-way.ts';
import { stepCause } from '../../src/lib/lessons/causes/step-cause.ts';
import { workedLesson, workedStep } from '../../src/lib/lessons/worked/index.ts';
import { replayByStep } from '../../src/lib/recipe/replay.ts';
import type { Attempt } from '../../src/lib/recipe/types.ts';
import { courseAttempt, pass } from '../golden/course/case.ts';

const ended = <T>(search: Generator<unknown, T>): T => {
  let next = search.next();
  while (!next.done) next = search.next();
  return next.value;
};

/** A step of an attempt, replayed and marked. */
function markedStep(lessonId: string, stepId: string, attempt: Attempt) {
  const lesson = loadLesson(lessonId)!;
  const step = lesson.steps.find(({ id }) => id === stepId)!;
  const replayed = replayByStep(
    attempt,
    lesson.steps.map(({ id }) => id),
  ).get(stepId)!;
  const { fabric } = attempt;
  return { step, replayed, mark: gradeStep(step, { ...replayed, fabric, attempt }), attempt };
}

/** The golden attempts at a step. */
function golden(lessonId: string, n: number): readonly (readonly [file: string, attempt: Attempt])[] {
  const folder = join(LESSONS, lessonId, stepFolders(lessonId)[n]!, 'attempts');
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((file) => file.endsWith('.attempt.json'))
    .map((file) => [file, JSON.parse(readFileSync(join(folder, file), 'utf8')) as Attempt]);
}

function said(lessonId: string, stepId: string, file: string) {
  const n = loadLesson(lessonId)!.steps.findIndex(({ id }) => id === stepId);
  const attempt = golden(lessonId, n).find(([name]) => name === `${file}.attempt.json`)![1];
  const { step, replayed, mark } = markedStep(lessonId, stepId, attempt);
  return stepCause(step, replayed, mark, attempt);
}

describe('the one right table of a step', () => {
  test('is there where nothing is left to choose', () => {
    const found = lessonIds().flatMap((id) => {
      const lesson = loadLesson(id)!;
      const commands = workedLesson(lesson, lesson.fabrics[0]!).commands;
      const attempt = { ...courseAttempt(lesson, pass(lesson.steps.at(-1)!.id, 'whole')), commands };
      return lesson.steps.flatMap((step) => {
        const { replayed } = markedStep(id, step.id, attempt);
        const marking = { step, before: replayed.before, attempt };
        const worked = workedStep(step, replayed.before, attempt.fabric);
        return ended(isDetermined(marking, worked)) ? [`${id}/${step.id}`] : [];
      });
    });
    // Free are: the place of slash lines, how far a point is backed off, how far an edge is blended, where notches stand, the course of a
    // style line, where a leg is pointed at, the hem, and what is done with what is left over.
    const free =
      /slash-lines?$|lines$|pivot$|finish$|back-off$|gathers$|tucks$|ease$|smooth$|notches$|style-line$|leftover$|allowances$|find$|slanted-seam\/read-the-block$/;
    const all = lessonIds().flatMap((id) => loadLesson(id)!.steps.map((step) => `${id}/${step.id}`));
    expect(found).toEqual(all.filter((one) => !free.test(one)));
  }, 60_000);

  test('is what every accepted attempt at such a step makes, by any route; at no step a cause is named for one', () => {
    let seen = 0;
    for (const id of lessonIds())
      for (const [n, { id: stepId }] of loadLesson(id)!.steps.entries())
        for (const [file, attempt] of golden(id, n)) {
          const { step, replayed, mark } = markedStep(id, stepId, attempt);
          if (mark.verdict !== 'accepted') continue;
          seen++;
          const { before, after, commands } = replayed;
          const marking = { step, before, attempt };
          const right = ended(ownRightWay(marking, commands, workedStep(step, before, attempt.fabric)));
          const found = ended(lookForCause(before, after, commands, right));
          const name = `${id}/${stepId} ${file}`;
          expect(stepCause(step, replayed, mark, attempt), name).toEqual({ kind: 'silent' });
          // Nothing may have been left to do in the step: then there are no commands to read anything from.
          if (commands.length > 0 && ended(isDetermined(marking, right)))
            expect(found.kind, name).toBe('right');
          else expect(found.kind, name).not.toBe('cause');
        }
    expect(seen).toBeGreaterThan(150);
  }, 120_000);
});

describe('what is said of how a step of a lesson went wrong', () => {
  test('is the cause, where the findings name none', () => {
    expect(
      said('gathers-tucks-ease', 'move', 'fail-dart-moved-opening-shoulder-and-neckline-exchanged'),
    ).toEqual({ kind: 'cause', cause: { code: 'shares-exchanged' } });
  });

  test('is nothing where the findings name one', () => {
    expect(said('waist-to-side', 'move', 'fail-dart-moved-residual-wrong-way').kind).toBe('silent');
    expect(said('waist-to-side', 'move', 'fail-dart-moved-pivot-slipped').kind).toBe('silent');
  });

  test('is that none of the known ways makes it, where there is one right table', () => {
    expect(said('french-dart', 'working-dart', 'fail-darts-extended-tip-beside').kind).toBe('none');
  });

  test('is nothing where many tables are right: a place outside the stretch has no cause that the table shows', () => {
    expect(said('waist-to-side', 'slash-line', 'fail-slash-drawn-place-too-low').kind).toBe('silent');
    expect(said('clustered-darts', 'lines', 'fail-slashes-laid-spacing-uneven').kind).toBe('silent');
  });
});
