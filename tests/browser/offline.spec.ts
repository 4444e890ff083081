import { readdirSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test, type Page } from '@playwright/test';
import { parseAttempt } from '../../src/lib/recipe/parse.ts';
import { toText } from '../../src/lib/recipe/save.ts';
import { sampleAttempt } from '../recipe/sample.ts';
import {
  check,
  commandsOf,
  enter,
  errorsOf,
  lesson,
  openAttempt,
  tableOf,
  cutShort,
} from './support/attempt.ts';
import { giveTyped, typedOf, unfold } from './support/typed.ts';

const sample = sampleAttempt(lesson.figure, 'knit');
/** Links of drills, of the first form and of the second. */
const DRILLS = [
  'slash.4711.woven.usual.3',
  '2.finish.4711.woven.usual.3.full',
  '2.princess.4711.woven.usual.3.full',
];
/** Lessons with other tools each: the bare looking, a dart swung, and a seam through the bust. */
const LESSONS = ['reading-the-block', 'mid-armhole-by-pivot', 'shoulder-princess'];
const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

/** Waits until the service worker has everything and answers for this page. */
async function visited(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    if (navigator.serviceWorker.controller === null)
      await new Promise((resolve) =>
        navigator.serviceWorker.addEventListener('controllerchange', resolve, {
          once: true,
        }),
      );
  });
}

test('after a visit to the home page alone, the whole lesson page works without a network', async ({
  page,
  context,
}) => {
  await page.goto('/');
  await visited(page);
  await context.setOffline(true);
  const errors = errorsOf(page);
  const failed: string[] = [];
  page.on('requestfailed', (request) => failed.push(request.url()));

  // A step by hand, checked, with everything that is fetched only when it is asked for.
  await enter(page);
  await unfold(page, 'typed');
  await giveTyped(page, typedOf(sample.commands[0]!, tableOf(cutShort(sample, 0))));
  expect(await check(page)).toBe('notReady');
  await button(page, 'A hint').click();
  await expect(page.getByRole('region', { name: 'Hints' }).getByRole('listitem')).toHaveCount(1);
  for (let i = 1; i < commandsOf(sample, 'read-the-block').length; i += 1)
    await giveTyped(page, typedOf(sample.commands[i]!, tableOf(cutShort(sample, i))));
  expect(await check(page)).toBe('accepted');
  await page.getByText('What to do, and why').hover();
  await button(page, 'neck point').click();
  await expect(page.getByText('The neck point is where the shoulder seam meets the neckline.')).toBeVisible();
  await button(page, 'Next step').click();
  await unfold(page, 'twin');

  // The worked solution plays and ends; the own work is as it was.
  await button(page, 'Show me how, on my own table').click();
  const player = page.getByRole('region', { name: 'Demonstration' });
  await expect(player).toContainText('Mirror the half');
  await button(page, 'To my own table').click();

  // Files go out and come in.
  const menu = page.getByText('My work');
  await openAttempt(page, sample);
  expect(await check(page)).toBe('accepted');
  await menu.click();
  const [saved] = await Promise.all([page.waitForEvent('download'), button(page, 'Save my attempt').click()]);
  const parsed = parseAttempt(await readFile(await saved.path(), 'utf8'));
  expect('ok' in parsed && toText(parsed.ok)).toBe(toText(sample));
  if (!(await button(page, 'Save the result sheet').isVisible())) await menu.click();
  const [sheet] = await Promise.all([
    page.waitForEvent('download'),
    button(page, 'Save the result sheet').click(),
  ]);
  expect(await readFile(await sheet.path(), 'utf8')).toContain('<svg');

  // And it is kept: another visit, still without a network.
  await page.reload();
  await button(page, 'Check').waitFor();
  expect(await check(page)).toBe('accepted');
  expect(failed).toEqual([]);
  expect(errors).toEqual([]);
});

test('everything the site is built of is kept by the service worker', async ({ page }) => {
  await page.goto('/');
  await visited(page);
  const kept = await page.evaluate(async () => {
    const names = await caches.keys();
    const lists = await Promise.all(
      names.map(async (name) =>
        (await (await caches.open(name)).keys()).map(({ url }) => new URL(url).pathname),
      ),
    );
    return lists.flat();
  });
  const root = fileURLToPath(new URL('../../build', import.meta.url));
  const built = readdirSync(root, { recursive: true, withFileTypes: true })
    .filter((one) => one.isFile())
    .map((one) => `/${relative(root, `${one.parentPath}/${one.name}`).replaceAll('\\', '/')}`)
    // The worker itself is the browser's to keep; a page that is not there and the version to compare need the network.
    .filter((path) => !['/service-worker.js', '/404.html', '/_app/version.json'].includes(path))
    .map((path) => path.replace(/\/index\.html$/, '/'));
  expect(built.length).toBeGreaterThan(20);
  // Exactly what no page shows is left out: the pictures of the README.
  const readme = await readFile(new URL('../../README.md', import.meta.url), 'utf8');
  const pictures = [...readme.matchAll(/\(static(\/pictures\/[^)]+)\)/g)].map(([, path]) => path).sort();
  expect(pictures.length).toBeGreaterThan(1);
  expect(built.filter((path) => !kept.includes(path)).sort()).toEqual(pictures);
});

test('after a visit to the home page alone, drills, practice, progress, the bench, the player and other lessons open without a network', async ({
  page,
  context,
}) => {
  await page.goto('/');
  await visited(page);
  await context.setOffline(true);
  const errors = errorsOf(page);
  const failed: string[] = [];
  // What is broken off because the page is left did not fail for want of a network.
  page.on('requestfailed', (request) => {
    const why = request.failure()?.errorText ?? '';
    if (why !== 'net::ERR_ABORTED') failed.push(`${request.url()} ${why}`);
  });

  await page.goto('/practice/');
  await expect(button(page, 'Make a drill')).toBeVisible();
  for (const other of ['progress', 'bench', 'attempt']) {
    await page.goto(`/${other}/`);
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  }
  for (const drill of DRILLS) {
    await page.goto('about:blank');
    await page.goto(`/practice/#${drill}`);
    await button(page, 'Begin').click();
    await page.locator('[data-target]').first().waitFor();
  }
  for (const id of LESSONS) {
    await page.goto(`/lesson/${id}/`);
    await button(page, 'Start at once').click();
    await page.locator('[data-target]').first().waitFor();
  }
  expect(failed).toEqual([]);
  expect(errors).toEqual([]);
});
