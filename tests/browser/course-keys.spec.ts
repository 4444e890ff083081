import { expect, test } from '@playwright/test';
import { lessonIds, loadLesson } from '../../src/cli/load-lessons.ts';
import { gradeLesson } from '../../src/lib/grading/grade.ts';
import { blockOf } from '../../src/lib/lessons/block.ts';
import type { Lesson } from '../../src/lib/lessons/types.ts';
import { inOrder } from '../../src/lib/panels/course-needs.ts';
import { apply } from '../../src/lib/recipe/apply.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import { errorsOf, stepButton } from './support/attempt.ts';
import { asOffered, passesOf } from './support/golden.ts';
import { Keys } from './support/keys.ts';
import { typedOf, type Typed } from './support/typed.ts';

/*
 * Every lesson of the course by key presses alone, each from a golden attempt of its own that passes: what the attempt holds is typed into
 * the forms. The page is looked at; nothing but the keyboard acts. The main lesson is in keys.spec.ts.
 */
const lessons = inOrder(lessonIds().map((id) => loadLesson(id)!)).filter(({ id }) => id !== 'slanted-seam');

interface TypedStep {
  readonly id: string;
  readonly typed: readonly Typed[];
}

/**
 * What is typed in each step, from the first attempt at the last step that passes every step, on the lesson's own block. Throws when there
 * is none that can be typed.
 */
function typedLesson(lesson: Lesson): readonly TypedStep[] {
  const own = JSON.stringify(blockOf(lesson));
  const attempt = passesOf(lesson.id, -1)
    .flatMap((one) => asOffered(lesson, one.attempt) ?? [])
    .find(
      (one) =>
        JSON.stringify(one.block) === own &&
        gradeLesson(lesson, one).every(({ verdict }) => verdict === 'accepted'),
    );
  if (!attempt) throw new Error(`no attempt at ${lesson.id} can be typed`);
  let work = startWork(attempt.block);
  return lesson.steps.map(({ id }) => ({
    id,
    typed: attempt.commands
      .filter(({ step }) => step === id)
      .map((command) => {
        const typed = typedOf(command, work);
        const next = apply(work, command);
        if ('refused' in next) throw new Error(`${id}: ${JSON.stringify(next.refused)}`);
        work = next.work;
        return typed;
      }),
  }));
}

for (const lesson of lessons)
  test(`${lesson.number}. ${lesson.id} by keys alone, every step accepted`, async ({ page }) => {
    const steps = typedLesson(lesson);
    const errors = errorsOf(page);
    const keys = new Keys(page);
    await page.goto(`/lesson/${lesson.id}/`);
    await page.getByRole('button', { name: 'Start at once' }).waitFor();
    await keys.button('Start at once');
    for (const [i, step] of steps.entries()) {
      await expect(stepButton(page, step.id)).toHaveAttribute('aria-current', 'step');
      if (step.typed.length > 0) await keys.unfold('By typed values');
      for (const [done, typed] of step.typed.entries()) {
        await keys.give(typed);
        await expect(page.getByText(/^What was done in this step/)).toContainText(`(${done + 1})`);
      }
      await keys.button('Check');
      const mark = page.locator('[data-verdict]');
      await mark.waitFor();
      const text = await mark.locator('li:not(.right)').allInnerTexts();
      expect(await mark.getAttribute('data-verdict'), `${step.id}: ${text.join(' | ')}`).toBe('accepted');
      const last = i === steps.length - 1;
      await keys.button(last ? 'Finish' : 'Next step');
      // The button is gone; the keyboard is not lost with it.
      if (!last) await expect(page.getByRole('heading', { level: 2 })).toBeFocused();
    }
    await expect(page.getByText('The lesson is finished')).toBeVisible();
    await keys.to('a', 'To the course');
    await keys.press('Enter');
    await expect(page.locator(`[data-lesson="${lesson.id}"]`)).toHaveAttribute('data-state', 'done');
    expect(errors).toEqual([]);
  });
