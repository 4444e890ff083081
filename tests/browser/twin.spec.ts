import { expect, test } from '@playwright/test';
import { apply } from '../../src/lib/recipe/apply.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import { sampleAttempt } from '../recipe/sample.ts';
import { check, commandsOf, enter, errorsOf, lesson } from './support/attempt.ts';
import { giveTyped, typedOf, unfold } from './support/typed.ts';

test('every step can be done by typed values alone', async ({ page }) => {
  const errors = errorsOf(page);
  const sample = sampleAttempt(lesson.figure, 'knit');
  let work = startWork({ figure: lesson.figure });
  await enter(page);
  for (const step of lesson.steps) {
    await expect(page.getByRole('heading', { level: 2 })).toContainText(step.title);
    await unfold(page, 'typed');
    for (const command of commandsOf(sample, step.id)) {
      await giveTyped(page, typedOf(command, work));
      const next = apply(work, command);
      if ('refused' in next) throw new Error('refused');
      work = next.work;
    }
    expect(await check(page), step.id).toBe('accepted');
    await page.getByRole('button', { name: /^(Next step|Finish)$/ }).click();
  }
  expect(errors).toEqual([]);
});
