import { existsSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Browser } from '@playwright/test';
import { SEEDS, toFragment } from '../../src/lib/lessons/drills/link.ts';
import { stepCount } from '../../src/lib/lessons/drills/steps.ts';
import { EXERCISES, newest, ROOM_KINDS } from '../../src/lib/lessons/drills/types.ts';
import { openFresh, Scripts, setToWork } from './scripts.ts';

const LESSONS = fileURLToPath(new URL('../../lessons', import.meta.url));

/** Bytes of JavaScript until the first step of a lesson or a drill can be worked. */
export const WORKED = 110_000;

/** What a page asked for, bytes gzipped. */
export interface PageSize {
  readonly name: string;
  readonly bytes: number;
  /** What it must not go beyond, bytes; left out for pages on which nothing is worked. */
  readonly goal?: number;
}

/** The main lesson opened again by somebody who left it before that step: what a step costs whose table others have made. */
async function openedAgain(browser: Browser, address: string, step: string): Promise<number> {
  const { page } = await openFresh(browser, address, '/lesson/slanted-seam/');
  await setToWork(page, 'Start at once');
  await page
    .getByLabel('Attempt file')
    .setInputFiles(`${LESSONS}/slanted-seam/${step}/attempts/start.attempt.json`);
  const before = page.getByRole('heading', { level: 2 });
  await before.getByText(`${Number(step.slice(0, 2)) - 1}. `).waitFor();
  await page.getByRole('button', { name: 'Check', exact: true }).click();
  await page.locator('[data-verdict=accepted]').waitFor();
  await page.getByRole('button', { name: 'Next step' }).click();
  await before.getByText(`${Number(step.slice(0, 2))}. `).waitFor();
  const scripts = new Scripts(page);
  await page.reload();
  await page.locator('[data-target], [data-act]').first().waitFor();
  const bytes = await scripts.total(page);
  await page.context().close();
  return bytes;
}

/**
 * JavaScript of every lesson and of a drill of each kind until the first step can be worked, and of the pages between. Where the table is worked
 * when a drill begins, what works it comes first: such a one must not weigh more than the main lesson opened again where its leftover is treated.
 */
export async function pageSizes(browser: Browser, address: string): Promise<readonly PageSize[]> {
  const all: PageSize[] = [];
  async function measure(
    name: string,
    path: string,
    begin?: 'Start at once' | 'Begin',
    goal?: number,
  ): Promise<void> {
    const { page, scripts } = await openFresh(browser, address, path);
    if (begin) await setToWork(page, begin);
    all.push({ name, bytes: await scripts.total(page), ...(goal !== undefined && { goal }) });
    await page.context().close();
  }
  const lessons = readdirSync(LESSONS).filter((id) => existsSync(`${LESSONS}/${id}/lesson.json`));
  for (const id of lessons) await measure(`lesson ${id}`, `/lesson/${id}/`, 'Start at once', WORKED);
  const again = await openedAgain(browser, address, '10-leftover');
  all.push({ name: 'slanted-seam opened again at 10', bytes: again });
  for (const exercise of EXERCISES) {
    const drill = newest({ exercise, seed: 4711 % SEEDS, fabric: 'woven', band: 'usual', hints: 3 });
    const worked = !ROOM_KINDS.includes(exercise);
    await measure(`drill ${exercise}`, `/practice/#${toFragment(drill)}`, 'Begin', worked ? again : WORKED);
  }
  // Of each kind the first step by itself, and the last, the heaviest: a second chance begins where its lesson stood at that step.
  for (const exercise of EXERCISES)
    for (const step of new Set([1, stepCount(exercise)])) {
      const drill = newest({ exercise, seed: 4711 % SEEDS, fabric: 'woven', band: 'usual', hints: 1, step });
      const worked = step > 1 || !ROOM_KINDS.includes(exercise);
      const name = `one step: ${exercise}, ${step}`;
      await measure(name, `/practice/#${toFragment(drill)}`, 'Begin', worked ? again : WORKED);
    }
  await measure('practice room', '/practice/');
  await measure('progress', '/progress/');
  await measure('watch an attempt', '/attempt/');
  return all;
}
