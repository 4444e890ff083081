import { describe, expect, it } from 'vitest';
import { lessonIds, loadLesson } from '../../src/cli/load-lessons.ts';
import { gradeOne } from '../../src/lib/grading/grade.ts';
import { formsFor } from '../../src/lib/panels/forms/index.ts';
import { fromTyped } from '../../src/lib/panels/typed.ts';
import { apply } from '../../src/lib/recipe/apply.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import type { Attempt, Command } from '../../src/lib/recipe/types.ts';
import { asOffered, passesOf } from '../browser/support/golden.ts';
import { typedOf } from '../browser/support/typed.ts';

const course = lessonIds().filter((id) => id !== 'slanted-seam');
const cases = course.flatMap((id) => {
  const lesson = loadLesson(id)!;
  return lesson.steps.flatMap((step, i) =>
    passesOf(id, i).flatMap(({ name, attempt }) => {
      const offered = asOffered(lesson, attempt);
      // A stroke of the hand is not typed back: its form takes points of a line (draw-forms.test.ts).
      const drawn = attempt.commands.some((command) => command.do === 'draw-curve');
      return offered && !drawn ? [{ lesson, id, step: step.id, name, attempt: offered }] : [];
    }),
  );
});

/** The attempt as it comes out of the forms of its steps, typed in mm and degrees. */
function typed({ lesson, attempt }: (typeof cases)[number]): Attempt {
  let work = startWork(attempt.block);
  const commands = attempt.commands.map((command): Command => {
    const tools = lesson.steps.find(({ id }) => id === command.step)!.tools;
    const { form: id, values } = typedOf(command, work);
    const form = formsFor(tools, work, attempt.fabric, 'mm').find((one) => one.id === id);
    if (!form) throw new Error(`${command.do}: there is no form ${id} among the tools of ${command.step}`);
    for (const name of Object.keys(values))
      if (!form.fields.some((field) => field.id === name)) throw new Error(`${id}: no box ${name}`);
    const built = form.build(
      Object.fromEntries(
        form.fields.map((field) => {
          const given = values[field.id];
          if (given === undefined) return [field.id, field.value];
          if (field.options && !field.options.some((option) => option.value === given))
            throw new Error(`${id}: ${field.id} has no ${given}`);
          return [field.id, typeof given === 'boolean' ? given : fromTyped(field, given, 'mm')];
        }),
      ),
    );
    if (typeof built === 'string') throw new Error(`${id}: ${built}`);
    const next = apply(work, built);
    if ('refused' in next) throw new Error(`${id}: ${JSON.stringify(next.refused)}`);
    work = next.work;
    return { ...built, step: command.step! };
  });
  return { ...attempt, commands };
}

// Lessons must be doable without a pointer: what the golden attempts hold can be typed, and is worth the same.
describe('golden attempts typed in the forms', () => {
  it('are of every course lesson, to its last step', () => {
    const last = course.map((id) => `${id}/${loadLesson(id)!.steps.at(-1)!.id}`);
    expect(last.filter((step) => !cases.some((one) => `${one.id}/${one.step}` === step))).toEqual([]);
  });

  it.each(cases)('$id/$step: $name passes', (one) => {
    const mark = gradeOne(one.lesson, one.step, typed(one));
    const open = mark.findings.filter(({ state }) => state === 'wrong' || state === 'missing');
    expect(open.map(({ code, measured }) => `${code} ${measured}`)).toEqual([]);
    expect(mark.verdict).toBe('accepted');
  });
});
