import { readFile } from 'node:fs/promises';
import { expect, test } from '@playwright/test';
import { stepCount } from '../../src/lib/lessons/drills/steps.ts';
import { EXERCISES } from '../../src/lib/lessons/drills/types.ts';
import { workedLesson } from '../../src/lib/lessons/worked/index.ts';
import { errorsOf } from './support/attempt.ts';
import { fileOf, lessonOf } from './support/drill.ts';

/* A drill of one step begins on a table that the page has to work first: with what every kind and step needs for that, and nothing else fetched before. */
for (const exercise of EXERCISES)
  test(`each step of the kind ${exercise} by itself: what comes before it is done, it is not, and it can be`, async ({
    page,
  }) => {
    test.setTimeout(240_000);
    const errors = errorsOf(page);
    for (let step = 1; step <= stepCount(exercise); step++) {
      const fragment = `4.${exercise}.${40 + step}.woven.usual.1.any.${step}`;
      const { lesson } = lessonOf(fragment);
      const { commands } = workedLesson(lesson, 'woven');
      const [{ id }] = lesson.steps as [(typeof lesson.steps)[number]];
      await page.goto('about:blank');
      await page.goto(`/practice/#${fragment}`);
      await page.getByRole('button', { name: 'Begin' }).click();
      await page.locator(`nav button[data-step="${id}"]`).waitFor();
      await expect(page.locator('nav button[data-step]')).toHaveCount(1);
      await expect(page.getByRole('button', { name: /^Undo/ })).toBeDisabled();
      await page.getByRole('button', { name: 'Check', exact: true }).click();
      await expect(page.locator('[data-verdict]')).toHaveAttribute('data-verdict', 'notReady');
      // What the page works by itself are the same commands as in the solved file.
      await page.getByText('My work', { exact: true }).click();
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('button', { name: 'Save my attempt' }).click(),
      ]);
      const saved = JSON.parse(await readFile(await download.path(), 'utf8')) as {
        commands: readonly unknown[];
      };
      expect(saved.commands).toEqual(commands.filter((one) => one.step !== id));
      await page.getByLabel('Attempt file').setInputFiles(fileOf(fragment));
      await expect(page.locator('[data-verdict]')).toHaveCount(0);
      await page.getByRole('button', { name: 'Check', exact: true }).click();
      await expect(page.locator('[data-verdict]')).toHaveAttribute('data-verdict', 'accepted');
    }
    expect(errors).toEqual([]);
  });

test('a single step is named above the table, which has the room of the rail', async ({ page }) => {
  await page.setViewportSize({ width: 1440, height: 900 });
  await page.goto('/practice/#4.slash.4703.woven.usual.1.any.3');
  await page.getByRole('button', { name: 'Begin' }).click();
  const step = page.getByRole('navigation', { name: 'Steps of the lesson' }).getByRole('button');
  await expect(step).toHaveText(/Slash and turn/);
  const [named, table] = [(await step.boundingBox())!, (await page.locator('.desk').boundingBox())!];
  expect(table.x).toBeLessThan(2);
  expect(named.y + named.height).toBeLessThanOrEqual(table.y);
  expect(named.width).toBeLessThan(300);
});
