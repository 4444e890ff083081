import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Page } from '@playwright/test';
import { readFileSync } from 'node:fs';
import type { Attempt } from '../../src/lib/recipe/types.ts';
import { errorsOf, stepButton } from './support/attempt.ts';

const golden = (path: string): string => readFileSync(`lessons/waist-to-side/${path}.attempt.json`, 'utf8');
/** The same dart, closed until its legs meet, and by an angle read from one body. */
const BY_LEGS = golden('04-prove/attempts/pass-on-the-block');
const TYPED = golden('03-move/attempts/pass-typed-angle');

async function begin(page: Page, text: string): Promise<void> {
  await page.goto('/lesson/waist-to-side/');
  await page.getByRole('button', { name: 'Start at once' }).click();
  const file = { name: 'a.attempt.json', mimeType: 'application/json', buffer: Buffer.from(text) };
  await page.getByLabel('Attempt file').setInputFiles(file);
  const { commands } = JSON.parse(text) as Attempt;
  await expect(stepButton(page, commands.at(-1)!.step!)).toHaveAttribute('aria-current', 'step');
}

async function onFiveBodies(page: Page): Promise<void> {
  await page.getByText('My work').click();
  await page.getByRole('button', { name: 'On five bodies' }).click();
  await expect(page.locator('li[data-outcome]')).toHaveCount(4);
}

const outcomes = (page: Page) =>
  page.locator('li[data-body]').evaluateAll((all) => all.map((li) => (li as HTMLElement).dataset['outcome']));

test('a dart closed until its legs meet holds on all five bodies', async ({ page }) => {
  const errors = errorsOf(page);
  await begin(page, BY_LEGS);
  await onFiveBodies(page);
  expect(await outcomes(page)).toEqual(['holds', 'holds', 'holds', 'holds']);
  await expect(page.getByText('the body you work on', { exact: true })).toBeVisible();
  await page.getByRole('button', { name: 'Back to my own table' }).first().click();
  await expect(page.getByRole('button', { name: 'Check', exact: true })).toBeVisible();
  expect(errors).toEqual([]);
});

test('a typed angle fails on the body that it was not read from, and that body is shown; by keys alone', async ({
  page,
}) => {
  await begin(page, TYPED);
  await onFiveBodies(page);
  const found = await outcomes(page);
  expect(found).toContain('fails');
  const body = page.locator('li[data-outcome="fails"]').last();
  const code = await body.getAttribute('data-body');
  await body.getByRole('button').focus();
  await page.keyboard.press('Enter');
  const heading = page.getByRole('heading', { name: `${code}: Fails here` });
  await expect(heading).toBeFocused();
  await expect(page.getByText('The angle was typed')).toBeVisible();
  await expect(
    page
      .getByRole('img', { name: /The table of/ })
      .or(page.locator('main[data-opened] svg').first())
      .first(),
  ).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(body.getByRole('button')).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('button', { name: 'Check', exact: true })).toBeVisible();
});

for (const [name, width, height] of [
  ['desk', 1440, 900],
  ['tablet', 820, 1180],
  ['phone', 390, 844],
] as const)
  for (const colorScheme of ['light', 'dark'] as const)
    test(`${name}, ${colorScheme}: all bodies and one of them keep the rules that axe can measure`, async ({
      page,
    }, info) => {
      await page.emulateMedia({ colorScheme });
      await page.setViewportSize({ width, height });
      await begin(page, TYPED);
      await onFiveBodies(page);
      const clean = async (shot: string) => {
        await page.screenshot({ path: info.outputPath(`${shot}.png`) });
        const { violations } = await new AxeBuilder({ page })
          .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
          .analyze();
        expect(violations.map(({ id, nodes }) => [id, nodes.map((n) => n.html)])).toEqual([]);
      };
      await clean('all');
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      await page.locator('li[data-outcome="fails"]').last().getByRole('button').click();
      await page.locator('main[data-opened] svg').first().waitFor();
      await clean('one');
    });
