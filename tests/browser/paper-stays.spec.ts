import { readFileSync } from 'node:fs';
import { expect, test, type Page } from '@playwright/test';
import { errorsOf } from './support/attempt.ts';
import { Keys } from './support/keys.ts';

/* What comes and goes around the table leaves the paper where it is, and the keyboard with the learner. */

async function begin(page: Page, fragment: string): Promise<void> {
  await page.goto(`/practice/#${fragment}`);
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.locator('[data-target]').first().waitFor();
}
const drawing = (page: Page) => page.locator('.desk > svg');
/** How the paper lies on the page: the drawing's upper edge, px, and where it is looked at from. */
const lies = async (page: Page) => ({
  top: (await drawing(page).boundingBox())!.y,
  seen: await drawing(page).locator('> g').first().getAttribute('transform'),
});

test('the paper stays where it is when there is something to set, and the keyboard when it is taken back', async ({
  page,
}) => {
  const errors = errorsOf(page);
  const keys = new Keys(page);
  await begin(page, '4.pivot.9.knit.usual.1.half.2');
  const before = await lies(page);
  await keys.to('[data-target^="mark:"]');
  await keys.press('Enter');
  await expect(page.locator('.strip [data-option="still"]')).toBeVisible();
  expect(await lies(page)).toEqual(before);
  await keys.button('Undo');
  await expect(page.locator('.strip [data-option="still"]')).toHaveCount(0);
  await expect(page.getByRole('group', { name: 'Take back' })).toBeFocused();
  expect(await lies(page)).toEqual(before);
  expect(errors).toEqual([]);
});

test('to go to where it began leaves the keyboard where it is', async ({ page }) => {
  const keys = new Keys(page);
  const slipped = 'lessons/waist-to-side/03-move/attempts/fail-dart-moved-pivot-slipped.attempt.json';
  await page.goto('/attempt/');
  await page.waitForFunction(() => document.documentElement.dataset['theme'] !== undefined);
  await keys.to('#attempt-text');
  await page.keyboard.insertText(readFileSync(slipped, 'utf8'));
  await keys.button('Open the text');
  await page.locator('[data-origin="began"]').waitFor();
  await keys.button('Go to it');
  await expect(page.getByRole('slider')).toHaveValue('4');
  await expect(page.getByRole('button', { name: 'Go to it' })).toBeFocused();
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 } });

  test('“Show all” shows all pieces, also where a step shows those first that it works on', async ({
    page,
  }) => {
    await begin(page, '4.ready.4711.woven.usual.1.any.4');
    const hidden = () =>
      page.locator('.desk > svg').evaluate((svg) => {
        const desk = svg.getBoundingClientRect();
        return [...svg.querySelectorAll('[data-piece]')].filter((piece) => {
          const { top, bottom, left, right } = piece.getBoundingClientRect();
          return top < desk.top || bottom > desk.bottom || left < desk.left || right > desk.right;
        }).length;
      });
    await expect.poll(hidden).toBeGreaterThan(0);
    await page.getByRole('button', { name: 'Show all' }).click();
    await expect.poll(hidden).toBe(0);
    // It stays so until other pieces come to be shown.
    await page.waitForTimeout(300);
    expect(await hidden()).toBe(0);
  });
});
