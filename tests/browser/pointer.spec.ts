import { expect, test } from '@playwright/test';
import * as lesson from './support/lesson.ts';
import { Desk } from './support/table.ts';

test('the whole lesson is done by mouse on the table, and every step is accepted', async ({ page }) => {
  test.slow();
  const desk = new Desk(page);
  await desk.open();
  await desk.push('Watch the demonstration');
  await expect(page.getByRole('region', { name: 'Demonstration' })).toContainText(/\d+ of \d+/);
  await expect(page.locator('[data-piece="front"]')).toBeVisible();
  await desk.push('To my own table');
  await desk.hasDone(0);
  await lesson.wholeLesson(desk, 'mouse');
  expect(desk.errors).toEqual([]);
});

test('from an attempt that was saved at the leftover, the woven is finished too', async ({ page }) => {
  const desk = new Desk(page);
  await desk.startAt('11-allowances');
  await desk.hand.push(page.locator('header summary'));
  await page.getByLabel('Cloth').selectOption('woven');
  await page.keyboard.press('Escape');
  await expect(page.locator('[data-piece="upper@woven"]')).toBeVisible();
  await lesson.allowances(desk, '15.9 mm');
  await desk.accepted();
  await lesson.labelAndGrain(desk);
  await desk.accepted();
  // What was taken out leaves nothing to ease: all five seams match.
  await lesson.walkTheSeams(desk, 'match');
  await desk.accepted('Finish');
  await lesson.finished(desk);
  expect(desk.errors).toEqual([]);
});
