import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { LESSONS, lessonIds, loadLesson, stepFolders } from '../../src/cli/load-lessons.ts';
import { gradeLesson, gradeOne } from '../../src/lib/grading/grade.ts';
import type { Finding, Verdict } from '../../src/lib/grading/types.ts';
import { parseAttempt } from '../../src/lib/recipe/parse.ts';
import type { Attempt, Command } from '../../src/lib/recipe/types.ts';
import { sentence } from '../../src/lib/strings/sentence.ts';

interface Expected {
  readonly verdict: Verdict;
  readonly codes: readonly string[];
  readonly causes: readonly string[];
}

const ENDING = '.attempt.json';
const open = (finding: Finding): boolean => finding.state === 'wrong' || finding.state === 'missing';
const codesOf = (findings: readonly Finding[]) =>
  findings
    .filter(open)
    .map((f) => f.code)
    .sort();
const causesOf = (findings: readonly Finding[]) =>
  findings
    .filter(open)
    .flatMap((f) => f.cause?.code ?? [])
    .sort();

function attemptIn(path: string): Attempt {
  const parsed = parseAttempt(readFileSync(path, 'utf8'));
  if ('problems' in parsed) throw new Error(`${path}: ${JSON.stringify(parsed.problems)}`);
  return parsed.ok;
}

for (const id of lessonIds()) {
  const lesson = loadLesson(id)!;
  describe.each(lesson.steps.map((step, i) => ({ step, folder: stepFolders(id)[i]! })))(
    `golden attempts of ${id}/$step.id`,
    ({ step, folder }) => {
      const place = join(LESSONS, id, folder, 'attempts');
      const files = readdirSync(place).filter((name) => name.endsWith(ENDING));
      const expected = JSON.parse(readFileSync(join(place, 'expected.json'), 'utf8')) as Record<
        string,
        Expected
      >;
      const names = files.map((file) => file.slice(0, -ENDING.length));

      it('are all listed with their mark, and none is listed that is not there', () => {
        expect(Object.keys(expected).sort()).toEqual(names.sort());
      });

      it('have a start, passes by several routes and failures', () => {
        expect(names).toContain('start');
        expect(names.filter((name) => name.startsWith('pass-')).length).toBeGreaterThanOrEqual(2);
      });

      it.each(names)('%s is marked with exactly its codes and causes', (name) => {
        const wanted = expected[name]!;
        const mark = gradeOne(lesson, step.id, attemptIn(join(place, name + ENDING)));
        expect(mark.verdict).toBe(wanted.verdict);
        expect(codesOf(mark.findings)).toEqual(wanted.codes);
        expect(causesOf(mark.findings)).toEqual(wanted.causes);
      });

      it.each(names)('%s has a name that says what its mark is', (name) => {
        const { verdict, codes } = expected[name]!;
        if (name.startsWith('pass-')) expect(verdict).toBe('accepted');
        else if (name.startsWith('fail-')) {
          expect(verdict).toBe('needsWork');
          expect(codes.some((code) => name.startsWith(`fail-${code.replace('/', '-')}`))).toBe(true);
        } else expect(verdict).toBe('notReady');
      });

      it.each(names)('%s gets the same mark with its pieces placed elsewhere on the table', (name) => {
        const attempt = attemptIn(join(place, name + ENDING));
        const moved = attempt.commands.flatMap((command, i): Command[] => [
          command,
          { do: 'place', piece: 'front', dx: 31.5 * i, dy: -12, angle: 0.7, step: command.step! },
          { do: 'place', piece: 'upper', dx: -80, dy: 4.25 * i, angle: -2, step: command.step! },
          { do: 'place', piece: 'lower@woven', dx: 8, dy: 9, angle: 3, step: command.step! },
        ]);
        const mark = gradeOne(lesson, step.id, attempt);
        const other = gradeOne(lesson, step.id, { ...attempt, commands: moved });
        expect(other).toEqual(mark);
      });

      it.each(names)('%s is explained in plain sentences with no gap left in them, in both units', (name) => {
        const mark = gradeOne(lesson, step.id, attemptIn(join(place, name + ENDING)));
        for (const finding of mark.findings) {
          for (const units of ['mm', 'inch'] as const) {
            const text = sentence(finding, units);
            expect(text).toMatch(/^[A-Z].*[.!?]$/s);
            expect(text).not.toMatch(/undefined|NaN|[{}]| {2}| [.,:]/);
            expect(text).not.toContain(finding.code);
          }
        }
      });

      it('does not accept doing nothing, nor the work of the steps before alone', () => {
        const whole = attemptIn(join(place, `start${ENDING}`));
        expect(gradeOne(lesson, step.id, whole).verdict).toBe('notReady');
        expect(gradeOne(lesson, step.id, { ...whole, commands: [] }).verdict).toBe('notReady');
      });
    },
  );

  it(`marks all steps of ${id} in one pass as it marks each by itself`, () => {
    const last = stepFolders(id).at(-1)!;
    const place = join(LESSONS, id, last, 'attempts');
    for (const name of readdirSync(place).filter((file) => file.endsWith(ENDING))) {
      const attempt = attemptIn(join(place, name));
      const marks = gradeLesson(lesson, attempt);
      expect(marks).toEqual(lesson.steps.map((step) => gradeOne(lesson, step.id, attempt)));
    }
  });
}
