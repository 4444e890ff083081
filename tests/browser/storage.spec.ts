import { readFile } from 'node:fs/promises';
import { expect, test, type Download, type Page } from '@playwright/test';
import { parseAttempt } from '../../src/lib/recipe/parse.ts';
import { toText } from '../../src/lib/recipe/save.ts';
import { sampleAttempt } from '../recipe/sample.ts';
import { check, enter, errorsOf, lesson, LESSON_PATH, openAttempt, stepButton } from './support/attempt.ts';

const sample = sampleAttempt(lesson.figure, 'knit', { upTo: 'style-line' });

const notices = (page: Page) => page.locator('.notices .notice');

/** Does something on the table and takes it back, so that the app tries to keep it both times. */
async function work(page: Page): Promise<void> {
  const button = (name: string) => page.getByRole('button', { name, exact: true });
  for (const name of ['Undo', 'Redo', 'Reset this step', 'Undo']) await button(name).click();
  expect(await check(page)).toBe('accepted');
}

async function savedText(page: Page, press: () => Promise<void>): Promise<string> {
  const [download] = await Promise.all([page.waitForEvent('download'), press()]);
  return textOf(download);
}
const textOf = async (download: Download): Promise<string> => readFile(await download.path(), 'utf8');

/** Work goes on in memory, is said once, and can be saved to a file that is the same attempt. */
async function goesOn(page: Page, said: RegExp): Promise<void> {
  await enter(page);
  await openAttempt(page, sample);
  await expect(notices(page)).toHaveCount(1);
  await expect(notices(page)).toContainText(said);
  await expect(notices(page)).toHaveAttribute('role', 'alert');
  await work(page);
  await expect(notices(page)).toHaveCount(1);
  const saved = await savedText(page, () =>
    page.getByRole('button', { name: 'Save my attempt to a file' }).click(),
  );
  const parsed = parseAttempt(saved);
  expect('ok' in parsed && toText(parsed.ok)).toBe(toText(sample));
  await page.getByRole('button', { name: 'All right' }).click();
  await expect(notices(page)).toHaveCount(0);
  await work(page);
  // It was said; saying it with each command would help nobody.
  await expect(notices(page)).toHaveCount(0);
}

test.describe('storage is forbidden', () => {
  for (const [how, forbid] of [
    [
      'opening it throws',
      () => {
        indexedDB.open = () => {
          throw new DOMException('not allowed here', 'SecurityError');
        };
      },
    ],
    ['there is none', () => Object.defineProperty(globalThis, 'indexedDB', { value: undefined })],
    [
      'opening it fails later',
      () => {
        indexedDB.open = () => {
          const request = new EventTarget() as IDBOpenDBRequest;
          Object.defineProperty(request, 'error', { value: new DOMException('no', 'InvalidStateError') });
          setTimeout(() => request.dispatchEvent(new Event('error')));
          return request;
        };
      },
    ],
  ] as const)
    test(`${how}: it is said once, and work goes on`, async ({ page }) => {
      const errors = errorsOf(page);
      await page.addInitScript(forbid);
      await goesOn(page, /does not let the app keep anything/);
      // Another visit starts fresh and says it again, once.
      await enter(page);
      await expect(notices(page)).toHaveCount(1);
      await expect(stepButton(page, lesson.steps[0]!.id)).toHaveAttribute('aria-current', 'step');
      expect(errors).toEqual([]);
    });

  test('settings that cannot be kept hold as long as the page', async ({ page }) => {
    const errors = errorsOf(page);
    await page.addInitScript(() => {
      for (const name of ['getItem', 'setItem'] as const)
        Storage.prototype[name] = () => {
          throw new DOMException('not allowed here', 'SecurityError');
        };
    });
    await enter(page);
    await page.getByText('My work').click();
    await page.getByLabel('Look').selectOption('dark');
    await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
    expect(errors).toEqual([]);
  });
});

test.describe('storage is full', () => {
  for (const [how, fill] of [
    [
      'at once',
      () => {
        IDBObjectStore.prototype.put = () => {
          throw new DOMException('no room', 'QuotaExceededError');
        };
      },
    ],
    [
      'when the transaction ends',
      () => {
        const put = IDBObjectStore.prototype.put;
        IDBObjectStore.prototype.put = function (...given) {
          const request = put.apply(this, given);
          const { transaction } = this;
          Object.defineProperty(transaction, 'error', {
            value: new DOMException('no room', 'QuotaExceededError'),
          });
          transaction.abort();
          return request;
        };
      },
    ],
  ] as const)
    test(`${how}: it is said once, and work goes on`, async ({ page }) => {
      const errors = errorsOf(page);
      await page.addInitScript(fill);
      await goesOn(page, /storage of this device is full/);
      expect(errors).toEqual([]);
    });

  test('what was kept before it was full comes back', async ({ page }) => {
    await enter(page);
    await openAttempt(page, sample);
    await expect.poll(() => kept(page, lesson.id)).toContain('draw-line');
    await page.addInitScript(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('no room', 'QuotaExceededError');
      };
    });
    await page.reload();
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await expect(notices(page)).toHaveCount(1);
    await page.reload();
    await expect(page.getByText(/^What was done in this step/)).toContainText('(1)');
    expect(await check(page)).toBe('accepted');
  });
});

/** The text that lies in the browser's database under a key. */
const kept = (page: Page, key: string): Promise<string> =>
  page.evaluate(
    (name) =>
      new Promise<string>((resolve, reject) => {
        const request = indexedDB.open('pin-and-pivot');
        request.onerror = () => reject(request.error);
        request.onsuccess = () => {
          const get = request.result.transaction('progress').objectStore('progress').get(name);
          get.onsuccess = () => {
            request.result.close();
            resolve(String(get.result));
          };
        };
      }),
    key,
  );

/** Puts a value where the app keeps the lesson's progress. */
async function plant(page: Page, value: unknown): Promise<void> {
  await page.goto('/icon.svg');
  await page.evaluate(
    ([key, planted]) =>
      new Promise<void>((resolve, reject) => {
        // On a fresh device this makes the database of the first version, which the app then brings up to date.
        const request = indexedDB.open('pin-and-pivot');
        request.onupgradeneeded = () => request.result.createObjectStore('progress');
        request.onerror = () => reject(request.error);
        request.onsuccess = () => {
          const transaction = request.result.transaction('progress', 'readwrite');
          transaction.objectStore('progress').put(planted, key as string);
          transaction.oncomplete = () => {
            request.result.close();
            resolve();
          };
        };
      }),
    [lesson.id, value] as const,
  );
}

const record = (change: object): string =>
  JSON.stringify({
    format: 'pin-and-pivot/progress',
    version: 1,
    attempt: JSON.parse(toText(sample)) as unknown,
    step: 'style-line',
    flagged: [],
    hints: {},
    demonstrationSeen: true,
    ...change,
  });

test.describe('what was kept is corrupted', () => {
  const whole = record({});
  const hostile = '<img src=x onerror="document.title=1">';
  for (const [how, value, where] of [
    ['it is no JSON', 'pins and needles', /JSON/],
    ['it is cut off', whole.slice(0, whole.length / 2), /JSON/],
    ['it is of a newer version', record({ version: 2 }), /version.*expected 1.*found 2/s],
    ['a part is missing', record({ attempt: undefined }), /attempt/],
    ['its attempt is newer', record({ attempt: { ...sample, version: 9 } }), /attempt\.version.*found 9/s],
    ['it holds markup', record({ format: hostile }), /format/],
    ['it is no text', { some: 'thing' }, /format/],
  ] as const)
    test(`${how}: it is said once and set aside, and the lesson starts fresh`, async ({ page }) => {
      await plant(page, value);
      const errors = errorsOf(page);
      await enter(page);
      await expect(notices(page)).toHaveCount(1);
      await expect(notices(page)).toContainText('cannot be read, so the lesson starts fresh');
      await expect(notices(page)).toContainText(where);
      await expect(page.locator('.notices img')).toHaveCount(0);
      await expect(stepButton(page, lesson.steps[0]!.id)).toHaveAttribute('aria-current', 'step');
      await expect(page.getByText(/^What was done in this step/)).toContainText('(0)');
      const old = typeof value === 'string' ? value : JSON.stringify(value);
      const saved = await savedText(page, () =>
        page.getByRole('button', { name: 'Save the old record' }).click(),
      );
      expect(saved).toBe(old);

      await openAttempt(page, sample);
      await work(page);
      await expect(notices(page)).toHaveCount(1);
      // What is kept now can be read again, and the old record lies beside it.
      await expect.poll(() => kept(page, lesson.id)).toContain('draw-line');
      expect(await kept(page, `${lesson.id}:unreadable`)).toBe(old);
      await page.goto(LESSON_PATH);
      await page.getByRole('button', { name: 'Check', exact: true }).waitFor();
      await expect(notices(page)).toHaveCount(0);
      await expect(page.getByText(/^What was done in this step/)).toContainText('(1)');
      expect(await page.title()).not.toBe('1');
      expect(errors).toEqual([]);
    });

  test('the home page stands, whatever was kept', async ({ page }) => {
    const errors = errorsOf(page);
    for (const value of ['nonsense', '{"step": 5}', '[]', 'null', '{"step":"style-line","flagged":"no"}']) {
      await plant(page, value);
      await page.goto('/');
      await expect(page.getByRole('link', { name: lesson.title, exact: true })).toBeVisible();
    }
    expect(errors).toEqual([]);
  });
});
