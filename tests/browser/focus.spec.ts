import { expect, test, type Page } from '@playwright/test';
import { errorsOf, stepButton } from './support/attempt.ts';

/* Where the keyboard is when what was pressed can be pressed no more. */

const attempt = (path: string): string => `lessons/${path}.attempt.json`;
const button = (page: Page, name: string | RegExp) =>
  page.getByRole('button', typeof name === 'string' ? { name, exact: true } : { name });

async function begin(page: Page, lesson: string, path: string, step: string): Promise<void> {
  await page.goto(`/lesson/${lesson}/`);
  await button(page, 'Start at once').click();
  await page.getByLabel('Attempt file').setInputFiles(attempt(`${lesson}/${path}`));
  await expect(stepButton(page, step)).toHaveAttribute('aria-current', 'step');
}
async function press(page: Page, name: string | RegExp): Promise<void> {
  await expect(button(page, name)).toBeEnabled();
  await button(page, name).focus();
  await page.keyboard.press('Enter');
}

test('the player keeps the keyboard at both of its ends', async ({ page }) => {
  const errors = errorsOf(page);
  await page.goto('/lesson/waist-to-side/');
  await button(page, 'Start at once').click();
  await press(page, 'Show me how, on my own table');
  const bar = page.getByRole('slider', { name: 'Commands' });
  await bar.focus();
  await page.keyboard.press('End');
  await page.keyboard.press('ArrowLeft');
  await expect(bar).toHaveValue('0');
  await press(page, 'Forward');
  await expect(button(page, 'Forward')).toBeDisabled();
  await expect(button(page, 'Back')).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(button(page, 'Back')).toBeDisabled();
  await expect(button(page, 'Play')).toBeFocused();
  expect(errors).toEqual([]);
});

test('taking back, doing again and emptying keep it in their row', async ({ page }) => {
  const errors = errorsOf(page);
  await begin(page, 'waist-to-side', '01-working-dart/attempts/pass-to-the-bust-point', 'working-dart');
  await press(page, 'Undo');
  await expect(button(page, 'Undo')).toBeDisabled();
  await expect(button(page, 'Redo')).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(button(page, 'Redo')).toBeDisabled();
  await expect(button(page, 'Undo')).toBeFocused();
  await press(page, 'Reset this step');
  await expect(button(page, 'Reset this step')).toBeDisabled();
  await expect(button(page, 'Undo')).toBeFocused();
  expect(errors).toEqual([]);
});

test('the last hint leaves it with the hints', async ({ page }) => {
  await page.goto('/lesson/waist-to-side/');
  await button(page, 'Start at once').click();
  await button(page, 'Check').click();
  await press(page, 'A hint');
  const more = button(page, 'Another hint');
  while ((await more.count()) > 0) {
    await expect(more).toBeFocused();
    await page.keyboard.press('Enter');
  }
  await expect(page.getByRole('region', { name: 'Hints' })).toBeFocused();
});

test('going to where it began leaves it there', async ({ page }) => {
  await page.goto('/attempt/');
  await page
    .getByLabel('Attempt file')
    .setInputFiles(
      attempt('waist-to-shoulder/04-prove/attempts/fail-angle-kept-sum-worked-from-the-sewn-point'),
    );
  await press(page, 'Go to it');
  await expect(button(page, 'Go to it')).toBeFocused();
});

test('after a mirror, right or wrong, nothing is to be chosen any more', async ({ page }) => {
  await begin(page, 'slanted-seam', '02-open-out/attempts/fail-opened-out-mirror-side-lower', 'open-out');
  await expect(page.getByText('The half is opened out. To mirror it across another edge')).toBeVisible();
  await expect(page.getByText('by its diamond')).toHaveCount(0);
  await button(page, 'Undo').click();
  await expect(page.getByText('Choose the edge to mirror across, by its diamond.')).toBeVisible();
});

test('another step is shown from its top, also where the panel was scrolled down', async ({ page }) => {
  await page.goto('/lesson/reading-the-block/');
  await press(page, 'Start at once');
  await press(page, 'Leave it, flagged');
  const heading = page.locator('h2');
  await expect(heading).toContainText('2.');
  const end = page.getByText('What was done in this step (0)');
  await page.getByText('The table in words').click();
  await end.scrollIntoViewIfNeeded();
  await expect(heading).not.toBeInViewport();
  await stepButton(page, 'find').click();
  await expect(heading).toContainText('1.');
  await expect(heading).toBeInViewport();
});
