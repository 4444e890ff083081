import { expect, test } from '@playwright/test';
import * as lesson from './support/lesson.ts';
import { Desk, touchHand } from './support/table.ts';

test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 });

test('the whole lesson is done by touch on a phone, and every step is accepted', async ({ page }) => {
  test.slow();
  const desk = new Desk(page, await touchHand(page));
  await desk.open();
  await desk.push('Start at once');
  await lesson.wholeLesson(desk, 'touch');
  expect(desk.errors).toEqual([]);
});
