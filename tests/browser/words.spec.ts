import { expect, test } from '@playwright/test';
import { errorsOf } from './support/attempt.ts';

test('a word of the trade opens in the text where it stands and closes again, by keys alone', async ({
  page,
}) => {
  const errors = errorsOf(page);
  await page.goto('/lesson/waist-to-side/');
  await page.getByRole('button', { name: 'Start at once' }).click();
  const text = page.locator('details.text');
  await expect(text.getByText('What to do, and why')).toBeVisible();
  const plain = (): Promise<string> =>
    text.evaluate((all) => (all.textContent ?? '').replace(/\s+/g, ' ').trim());
  const before = await plain();
  await text.locator('summary').focus();
  const block = text.getByRole('button', { name: 'block', exact: true });
  await expect(block).toHaveAttribute('aria-expanded', 'false');
  // The text is the same with its words to be asked, spaces and stops and all.
  expect(await plain()).toBe(before);

  await page.keyboard.press('Tab');
  await expect(block).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(block).toHaveAttribute('aria-expanded', 'true');
  await expect(block.locator('xpath=following-sibling::*[1]')).toHaveText(
    /^A block, or sloper, is the fitted body in paper/,
  );
  await page.keyboard.press('Enter');
  await expect(block).toHaveAttribute('aria-expanded', 'false');
  expect(await plain()).toBe(before);
  expect(errors).toEqual([]);
});

test('a word opens by a tap on a phone, and nothing is pushed beside the screen', async ({ browser }) => {
  const page = await browser.newPage({
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
  });
  await page.goto('/lesson/waist-to-side/');
  await page.getByRole('button', { name: 'Start at once' }).click();
  await page.getByText('The dart you see').tap();
  await page.getByRole('button', { name: 'sewn dart' }).tap();
  await expect(page.getByText('The sewn dart is backed off')).toBeVisible();
  // The colon behind the word stays with it.
  await expect(page.getByText('The dart you see')).toContainText(/sewn dart: *The sewn dart is backed off/);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  await page.close();
});
