import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import AxeBuilder from '@axe-core/playwright';
import { expect, test } from '@playwright/test';
import { lessonIds, loadLesson } from '../../src/cli/load-lessons.ts';

test('the home page leads to the first lesson, without an error on the way', async ({ page }) => {
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  await page.goto('/');
  await expect(page).toHaveTitle(/Pin & Pivot/);
  await page.getByRole('link', { name: 'Begin: 1. Read the block' }).click();
  await expect(page).toHaveURL(/\/lesson\/reading-the-block\/?$/);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  expect(errors).toEqual([]);
});

test('after the first visit the home page and the lesson open without a network', async ({
  page,
  context,
}) => {
  await page.goto('/');
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    // Ready means that a worker is active; this page is its own from the moment it takes over.
    if (navigator.serviceWorker.controller === null) {
      await new Promise((resolve) =>
        navigator.serviceWorker.addEventListener('controllerchange', resolve, { once: true }),
      );
    }
  });
  await context.setOffline(true);
  await page.reload();
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await page.goto('/lesson/slanted-seam/');
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  // The address without its last slash is redirected by the server, which is not there now.
  await page.goto('/lesson/slanted-seam');
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  // A lesson that was never visited, by its link on the map.
  await page.goto('/');
  await page.getByRole('link', { name: 'Extend a dart to the bust point', exact: true }).click();
  await expect(page.getByRole('button', { name: 'Start at once' })).toBeVisible();
  // Nothing but the kept files answers: a page that was never built is not to be had.
  await expect(page.goto('/no-such-page/')).rejects.toThrow(/ERR_INTERNET_DISCONNECTED|ERR_FAILED/);
});

test('what a lesson says comes with its own page, in no script', async () => {
  const folder = fileURLToPath(new URL('../../build/_app/immutable', import.meta.url));
  const scripts = readdirSync(folder, { recursive: true })
    .map(String)
    .filter((name) => name.endsWith('.js'))
    .map((name) => readFileSync(join(folder, name), 'utf8'));
  expect(scripts.length).toBeGreaterThan(10);
  for (const id of lessonIds()) {
    const { summary, steps } = loadLesson(id)!;
    const said = [summary, ...steps.flatMap(({ text, hints }) => [text[0]!, hints[0]!.rungs[0]!])];
    for (const words of said)
      expect(
        scripts.some((script) => script.includes(words)),
        words,
      ).toBe(false);
  }
});

test('an address that does not exist gets status 404 and a page that leads back', async ({ page }) => {
  const response = await page.goto('/no-such-page/');
  expect(response?.status()).toBe(404);
  await expect(page.getByRole('link', { name: /lessons/i }).first()).toBeVisible();
});

test('home and lesson keep the WCAG 2.2 AA rules that axe can measure, light and dark', async ({ page }) => {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    for (const path of ['/', '/lesson/slanted-seam/']) {
      await page.goto(path);
      await page.getByRole('heading', { level: 1 }).waitFor();
      const { violations } = await new AxeBuilder({ page })
        .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
        .analyze();
      const found = violations.map(({ id, nodes }) => ({
        id,
        at: nodes.map(({ target }) => target.join(' ')),
      }));
      expect(found, `${path} ${colorScheme}`).toEqual([]);
    }
  }
});

test('home leads to the practice room, the free bench, the attempts and the progress', async ({ page }) => {
  for (const [name, title] of [
    ['Practice room', 'Practice room'],
    ['Free bench', 'Free bench'],
    ['Watch an attempt', 'Watch an attempt'],
    ['My progress', 'My progress'],
  ] as const) {
    await page.goto('/');
    await page.getByRole('navigation', { name: 'Besides the course' }).getByRole('link', { name }).click();
    await expect(page.getByRole('heading', { level: 1, name: title })).toBeVisible();
  }
});

for (const theme of ['system', 'dark'] as const)
  test(`what is printed is dark on light where the look is ${theme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme: 'dark' });
    await page.goto('/');
    await page.evaluate((look) => (document.documentElement.dataset['theme'] = look), theme);
    const light = () =>
      page.evaluate(() => {
        const { color, backgroundColor } = getComputedStyle(document.body);
        const sum = (text: string) =>
          (text.match(/\d+/g) ?? []).slice(0, 3).reduce((all, one) => all + Number(one), 0);
        return sum(backgroundColor) > sum(color);
      });
    expect(await light()).toBe(false);
    await page.emulateMedia({ media: 'print' });
    expect(await light()).toBe(true);
  });
