import { readFile } from 'node:fs/promises';
import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Page } from '@playwright/test';
import type { ProgressEvent } from '../../src/lib/progress/events.ts';
import { logToText, parseLog } from '../../src/lib/progress/log-file.ts';
import { toText } from '../../src/lib/recipe/save.ts';
import { sampleAttempt } from '../recipe/sample.ts';
import { DAY, mark, MINUTE, worked, wrong } from '../practice/history.ts';
import { check, enter, errorsOf, lesson, LESSON_PATH, openAttempt, stepButton } from './support/attempt.ts';

/* What is due when, and how it is rated, is held in tests/practice; here that the pages record it, show it and carry it over. */

const NOW = Date.now();
const ago = (days: number): number => NOW - days * DAY;
const of = (step: string, skill: string, id = lesson.id) => ({
  step,
  skill,
  exercise: { kind: 'lesson' as const, id, content: 1 },
});
const DART = of('first-dart', 'side-to-style-line/slash/plain');
const OLD = of('a-step-gone', 'a-skill-gone', 'a-lesson-gone');
const HISTORY: readonly ProgressEvent[] = [
  wrong(ago(3), DART),
  mark(ago(8), { ...OLD, hints: 2 }),
  worked(ago(5), of('working-darts', 'working-dart')),
  mark(ago(5) + MINUTE, of('working-darts', 'working-dart')),
];
const textOf = (log: readonly ProgressEvent[]): string =>
  logToText({ log, course: { done: {}, testedOut: {} } });

const due = (page: Page) => page.getByRole('region', { name: 'Due today' });

async function add(page: Page, text: string): Promise<void> {
  // The page is drawn before it listens.
  await page.waitForLoadState('networkidle');
  const file = { name: 'mine.progress.json', mimeType: 'application/json', buffer: Buffer.from(text) };
  await page.getByLabel('Progress file').setInputFiles(file);
}
async function saved(page: Page): Promise<readonly ProgressEvent[]> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save my progress' }).click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/^pin-and-pivot-\d{4}-\d\d-\d\d\.progress\.json$/);
  const parsed = parseLog(await readFile(await download.path(), 'utf8'));
  if ('problems' in parsed) throw new Error(JSON.stringify(parsed.problems));
  return parsed.ok.log;
}

test('each check in a lesson is recorded: the mark, the hints, the solution, and nothing twice', async ({
  page,
}) => {
  const errors = errorsOf(page);
  const sample = sampleAttempt(lesson.figure, 'knit', { upTo: 'open-out' });
  await enter(page);
  expect(await check(page)).toBe('notReady');
  // Checking again what has not changed is nothing new.
  expect(await check(page)).toBe('notReady');
  await page.getByRole('button', { name: 'A hint', exact: true }).click();
  expect(await check(page)).toBe('notReady');
  await openAttempt(page, sample);
  await page.getByRole('button', { name: 'Show me how, on my own table' }).click();
  await page.getByRole('button', { name: 'To my own table' }).click();
  expect(await check(page)).toBe('accepted');

  await page.goto('/progress/');
  await expect(page.getByText('Opening out the half')).toBeVisible();
  const log = await saved(page);
  expect(log.map(({ kind, step }) => `${kind} ${step}`)).toEqual([
    'mark read-the-block',
    'hint read-the-block',
    'mark read-the-block',
    'worked open-out',
    'mark open-out',
  ]);
  expect(log[0]).toMatchObject({ verdict: 'notReady', hints: 0, worked: false, skill: 'read-block' });
  expect(log[1]).toMatchObject({ hints: 1 });
  expect(log[2]).toMatchObject({ hints: 1 });
  expect(log[4]).toMatchObject({ verdict: 'accepted', worked: true, codes: [], level: null });
  expect(log[4]).toMatchObject({ exercise: { kind: 'lesson', id: lesson.id, content: lesson.content } });
  expect(new Set(log.map(({ id }) => id)).size).toBe(5);
  expect(new Set(log.map(({ device }) => device)).size).toBe(1);
  for (const event of log) if (event.kind === 'mark') expect(event.seconds).toBeLessThan(60);

  // Unfinished work is rated nowhere; what was right only after the solution is due tomorrow, and says so.
  const skill = page.locator('[data-skill="open-out"]');
  await expect(skill).toContainText('solution shown once. Comes again tomorrow.');
  await expect(page.locator('[data-skill]')).toHaveCount(1);
  await skill.locator('summary').click();
  await expect(skill).toContainText('not yet by your own hand');
  await expect(skill).toContainText(`${lesson.title}: ${lesson.steps[1]!.title}`);
  expect(errors).toEqual([]);
});

test('a step that is left, flagged, is recorded as it was', async ({ page }) => {
  await enter(page);
  await page.getByRole('button', { name: 'Leave it, flagged' }).click();
  await expect(stepButton(page, 'open-out')).toHaveAttribute('aria-current', 'step');
  await page.goto('/');
  await expect(page.getByRole('button', { name: 'Save my progress' })).toBeVisible();
  expect(await saved(page)).toMatchObject([{ kind: 'mark', step: 'read-the-block', verdict: 'notReady' }]);
});

test('the home page says what is due and why, and leads to the step', async ({ page }) => {
  const errors = errorsOf(page);
  // So that the step can be gone to.
  await enter(page);
  await openAttempt(page, sampleAttempt(lesson.figure, 'knit'));
  await page.goto('/');
  // With nothing due the course comes first.
  await expect(page.getByText('comes back here when it is time')).toBeVisible();
  await expect(due(page)).toHaveCount(0);
  await add(page, textOf(HISTORY));
  await expect(due(page).locator('li')).toHaveCount(3);
  await expect(page.getByText('4 entries are new.')).toBeVisible();
  const [above, course] = await Promise.all(
    [due(page), page.getByRole('region', { name: 'The course' })].map((one) => one.boundingBox()),
  );
  expect(above!.y).toBeLessThan(course!.y);
  await expect(due(page)).toContainText('Last tried 3 days ago, and it did not come right. Due for 2 days.');
  await expect(due(page)).toContainText('Last done 5 days ago, after the solution was shown');
  const old = due(page).locator('li', { hasText: 'A skill gone' });
  await expect(old).toContainText('Last done 8 days ago with 2 hints.');
  await expect(old).toContainText('from an earlier version');
  await expect(old.getByRole('link')).toHaveCount(0);
  await page.reload();
  await expect(due(page).locator('li')).toHaveCount(3);
  // What is a step of a drill leads to that step of one.
  await page.getByRole('link', { name: 'Practise: Drawing the working dart' }).click();
  await expect(page).toHaveURL(/\/practice\/?#4\.pivot\.\d+\.woven\.(wide|usual)\.3\.any\.1$/);
  // A skill of a lesson that is drilled as well leads to a drill, fresh each time.
  await page.goto('/');
  await page.getByRole('link', { name: 'Practise: Side dart into a style line, slash and spread' }).click();
  await expect(page).toHaveURL(/\/practice\/?#2\.line\.\d+\.woven\.(wide|usual)\.3\.any$/);
  expect(errors).toEqual([]);
});

test('what only a lesson has leads to its step', async ({ page }) => {
  const errors = errorsOf(page);
  await page.goto('/');
  await add(page, textOf([mark(ago(40), of('prove', 'close-and-overlay', 'waist-to-side'))]));
  const link = page.getByRole('link', { name: 'Practise: Closing and overlaying' });
  await expect(link).toHaveAttribute('href', /\/lesson\/waist-to-side#again=prove$/);
  // What a drill has leads to that, also where the mark was made in a lesson.
  await add(page, textOf([mark(ago(41), of('open-out', 'open-out'))]));
  await page.getByRole('link', { name: 'Practise: Opening out the half' }).click();
  await expect(page).toHaveURL(/\/practice\/?#4\.block\.\d+\.woven\.(wide|usual)\.3\.any\.3$/);
  expect(errors).toEqual([]);
});

test('in a step that is to be worked anew earlier work is no practice until it is emptied', async ({
  page,
}) => {
  const errors = errorsOf(page);
  await enter(page);
  await openAttempt(page, sampleAttempt(lesson.figure, 'knit', { upTo: 'style-line' }));
  await page.goto('/');
  await add(page, textOf([mark(ago(40), of('open-out', 'open-out'))]));
  await expect(due(page).locator('li')).toHaveCount(1);
  const again = `/lesson/${lesson.id}/#again=open-out`;
  await page.goto(again);
  await expect(stepButton(page, 'open-out')).toHaveAttribute('aria-current', 'step');
  const anew = page.locator('[data-anew]');
  await expect(anew).toContainText('does not count as practice');
  expect(await check(page)).toBe('accepted');
  await page.goto('/progress/');
  await expect(due(page).locator('li')).toHaveCount(1);
  expect(await saved(page)).toHaveLength(1);

  await page.goto(again);
  await page.getByRole('button', { name: 'Empty this step and work it anew' }).click();
  await expect(anew).toContainText('Undo brings your earlier work back');
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(anew).toContainText('does not count as practice');
  await page.getByRole('button', { name: 'Empty this step and work it anew' }).click();
  await page.locator('[data-target="centre-front"] .hit').click();
  await expect(anew).toHaveCount(0);
  expect(await check(page)).toBe('accepted');
  await page.goto('/progress/');
  await expect(due(page)).toContainText('Nothing is due today.');
  expect(await saved(page)).toHaveLength(2);
  expect(errors).toEqual([]);
});

test('a skill that is drilled leads to a fresh drill of it, whose mark is recorded with its level', async ({
  page,
}) => {
  const errors = errorsOf(page);
  const skill = 'waist-to-shoulder/pivot/plain';
  await page.goto('/');
  await add(page, textOf([wrong(ago(2), { ...of('pivot', skill, 'a-lesson-gone'), error: 4 })]));
  await page.getByRole('link', { name: 'Practise: Waist dart to the shoulder, pin and pivot' }).click();
  // The address names the drill itself: a reload and a link that is sent show the same one.
  await expect(page).toHaveURL(/\/practice\/?#pivot\.\d+\.woven\.(wide|usual)\.3$/);
  const band = /wide/.test(page.url()) ? -1 : 0;
  await page.reload();
  await page.getByRole('button', { name: /Begin/ }).click();
  await check(page);
  await page.goto('/progress/');
  await page.getByRole('heading', { name: 'By skill' }).waitFor();
  const log = await saved(page);
  expect(log).toHaveLength(2);
  expect(log[1]).toMatchObject({ kind: 'mark', step: 'working-dart', level: band });
  expect(log[1]!.exercise.kind).toBe('drill');
  expect(errors).toEqual([]);
});

test('two devices come to the same, in whatever order files go to and fro', async ({ browser }) => {
  const [here, there] = await Promise.all(
    [1, 2].map(async () => (await browser.newContext({ serviceWorkers: 'block' })).newPage()),
  );
  for (const [page, log] of [
    [here!, HISTORY.slice(0, 3)],
    [there!, HISTORY.slice(2)],
  ] as const) {
    await page.goto('/progress/');
    await add(page, textOf(log));
    await expect(page.getByRole('status')).toContainText('are new');
  }
  await add(there!, textOf(await saved(here!)));
  await expect(there!.getByRole('status')).toContainText('2 entries are new. One was here already.');
  await there!.reload();
  const all = await saved(there!);
  expect(all.map(({ id }) => id).sort()).toEqual(HISTORY.map(({ id }) => id).sort());
  await add(here!, textOf(all));
  await expect(here!.getByRole('status')).toContainText('One entry is new. 3 were here already.');
  expect(textOf(await saved(here!))).toBe(textOf(all));
  await add(here!, textOf(all));
  await expect(here!.getByRole('status')).toContainText('All of it was here already.');
  for (const page of [here!, there!]) await page.context().close();
});

test.describe('a file that is no good', () => {
  for (const [how, text, said] of [
    ['is no JSON', 'pins', /the file: expected a value, found "pins"/],
    [
      'is an attempt',
      toText(sampleAttempt(lesson.figure, 'knit')),
      /format: expected "pin-and-pivot\/progress-log"/,
    ],
    [
      'is newer',
      textOf([]).replace('"version":1', '"version":2'),
      /version: expected 1, found 2, from a newer/,
    ],
    [
      'has a measure in it',
      textOf(HISTORY).replace('"hints":0', '"bust":840,"hints":0'),
      /events\[\d\]\.bust: expected no such key/,
    ],
    [
      'holds markup',
      textOf([]).replace('"pin-and-pivot/progress-log"', '"<img src=x onerror=alert(1)>"'),
      /found "<img src=x/,
    ],
  ] as const)
    test(`${how}: it is refused whole, with the place, and nothing changes`, async ({ page }) => {
      const errors = errorsOf(page);
      await page.goto('/progress/');
      await add(page, textOf(HISTORY));
      await expect(page.getByRole('status')).toContainText('4 entries are new.');
      await add(page, text);
      const notice = page.getByRole('alert');
      await expect(notice).toContainText('The file was not added; your progress is as it was.');
      await expect(notice).toContainText(said);
      await expect(notice.locator('img')).toHaveCount(0);
      expect(await saved(page)).toHaveLength(4);
      await expect(notice).toHaveCount(0);
      expect(errors).toEqual([]);
    });
});

test.describe('storage', () => {
  test('of the version before is brought up to date, and nothing in it is lost', async ({ page }) => {
    const errors = errorsOf(page);
    const record = JSON.stringify({
      format: 'pin-and-pivot/progress',
      version: 1,
      attempt: JSON.parse(toText(sampleAttempt(lesson.figure, 'knit', { upTo: 'style-line' }))) as unknown,
      step: 'style-line',
      flagged: ['open-out'],
      hints: { 'style-line': 1 },
      demonstrationSeen: true,
    });
    await page.goto('/icon.svg');
    await page.evaluate(
      ([key, text]) =>
        new Promise<void>((resolve, reject) => {
          const request = indexedDB.open('pin-and-pivot', 1);
          request.onupgradeneeded = () => request.result.createObjectStore('progress');
          request.onerror = () => reject(request.error);
          request.onsuccess = () => {
            const transaction = request.result.transaction('progress', 'readwrite');
            transaction.objectStore('progress').put(text, key);
            transaction.objectStore('progress').put('a note of old', 'another:unreadable');
            transaction.oncomplete = () => (request.result.close(), resolve());
          };
        }),
      [lesson.id, record] as const,
    );
    await page.goto('/');
    await add(page, textOf(HISTORY));
    await expect(due(page).locator('li')).toHaveCount(3);
    await page.goto(LESSON_PATH);
    await expect(stepButton(page, 'style-line')).toHaveAttribute('aria-current', 'step');
    expect(await check(page)).toBe('accepted');
    const kept = await page.evaluate(
      () =>
        new Promise<readonly [number, string[], unknown]>((resolve, reject) => {
          const request = indexedDB.open('pin-and-pivot');
          request.onerror = () => reject(request.error);
          request.onsuccess = () => {
            const db = request.result;
            const get = db.transaction('progress').objectStore('progress').get('another:unreadable');
            get.onsuccess = () => (db.close(), resolve([db.version, [...db.objectStoreNames], get.result]));
          };
        }),
    );
    expect(kept).toEqual([3, ['events', 'progress', 'works'], 'a note of old']);
    expect(errors).toEqual([]);
  });

  test('held in an older version by another tab: it is said, work goes on, and is kept once the tab is closed', async ({
    page,
    context,
  }) => {
    const other = await context.newPage();
    await other.goto('/icon.svg');
    await other.evaluate(
      () =>
        new Promise<void>((resolve) => {
          const request = indexedDB.open('pin-and-pivot', 1);
          request.onupgradeneeded = () => request.result.createObjectStore('progress');
          // Left open, and it gives way to nobody.
          request.onsuccess = () => resolve();
        }),
    );
    await page.goto('/progress/');
    await expect(page.locator('main')).toContainText('open in another tab in another version');
    await add(page, textOf(HISTORY));
    await expect(page.getByRole('status')).toContainText('lasts until you close this page');
    await other.close();
    await expect(async () => {
      await add(page, textOf(HISTORY));
      await expect(page.getByRole('status')).toHaveText('All of it was here already.', { timeout: 1000 });
    }).toPass();
    await page.reload();
    await expect(due(page).locator('li')).toHaveCount(3);
  });

  test('forbidden: the pages stand and say so', async ({ page }) => {
    const errors = errorsOf(page);
    await page.addInitScript(() => {
      indexedDB.open = () => {
        throw new DOMException('not allowed here', 'SecurityError');
      };
    });
    await page.goto('/');
    await expect(due(page)).toContainText('does not let the app keep anything');
    await add(page, textOf(HISTORY));
    await expect(page.getByText('It could not be kept on this device')).toBeVisible();
    await expect(due(page).locator('li')).toHaveCount(3);
    expect(errors).toEqual([]);
  });

  test('with entries of a newer version: they are counted and left, the rest is shown', async ({ page }) => {
    await page.goto('/progress/');
    await add(page, textOf(HISTORY));
    await expect(page.getByRole('status')).toContainText('are new');
    await page.evaluate(
      () =>
        new Promise<void>((resolve, reject) => {
          const request = indexedDB.open('pin-and-pivot');
          request.onerror = () => reject(request.error);
          request.onsuccess = () => {
            const transaction = request.result.transaction('events', 'readwrite');
            transaction.objectStore('events').put('{"kind":"sung"}', 'newer-event');
            transaction.oncomplete = () => (request.result.close(), resolve());
          };
        }),
    );
    await page.reload();
    await expect(page.locator('main')).toContainText(
      'One entry on this device cannot be read by this version',
    );
    await expect(page.locator('[data-skill]')).toHaveCount(3);
  });
});

test.describe('for everybody', () => {
  for (const [name, viewport] of [
    ['desk', { width: 1440, height: 900 }],
    ['phone', { width: 390, height: 844 }],
  ] as const)
    for (const colorScheme of ['light', 'dark'] as const)
      test(`${name}, ${colorScheme}: no violation of WCAG 2.2 A or AA, and no scrolling sideways`, async ({
        browser,
      }) => {
        // Outside source: axe-core's rules (read: the tags of the installed version).
        const context = await browser.newContext({ viewport, colorScheme });
        const page = await context.newPage();
        for (const path of ['/', '/progress/']) {
          await page.goto(path);
          await page.locator('h2').first().waitFor();
          await add(page, textOf(HISTORY));
          await expect(page.getByRole('status')).not.toBeEmpty();
          await add(page, '{');
          await expect(page.getByRole('alert')).toBeVisible();
          for (const one of await page.locator('[data-skill] summary').all()) await one.click();
          const { violations } = await new AxeBuilder({ page })
            .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
            .analyze();
          expect(violations.map(({ id, nodes }) => `${id} ${nodes[0]?.html}`)).toEqual([]);
          for (const width of [viewport.width, 320]) {
            await page.setViewportSize({ width, height: viewport.height });
            expect(await page.evaluate(() => document.scrollingElement!.scrollWidth)).toBeLessThanOrEqual(
              width,
            );
          }
          await page.setViewportSize(viewport);
        }
        await context.close();
      });

  test('by keys alone: from the top of the home page to the history, and one skill opened', async ({
    page,
  }) => {
    await page.goto('/');
    await add(page, textOf(HISTORY));
    await expect(due(page).locator('li')).toHaveCount(3);
    const go = async (css: string): Promise<void> => {
      for (let i = 0; i < 40; i += 1) {
        if (await page.evaluate((one) => document.activeElement?.matches(one) ?? false, css)) return;
        await page.keyboard.press('Tab');
      }
      throw new Error(`the Tab key does not lead to ${css}`);
    };
    await go('a[href$="progress"], a[href$="progress/"]');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'By skill' }).waitFor();
    await go('[data-skill] summary');
    await page.keyboard.press('Enter');
    await expect(page.locator('[data-skill]').first().locator('li').first()).toBeVisible();
  });
});
