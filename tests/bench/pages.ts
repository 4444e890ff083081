import { existsSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Browser } from '@playwright/test';
import { SEEDS, toFragment } from '../../src/lib/lessons/drills/link.ts';
import { stepCount } from '../../src/lib/lessons/drills/steps.ts';
import { EXERCISES, newest, ROOM_KINDS } from '../../src/lib/lessons/drills/types.ts';
import { openFresh, setToWork } from './scripts.ts';

const LESSONS = fileURLToPath(new URL('../../lessons', import.meta.url));

/** What a page asked for, bytes gzipped. */
export interface PageSize {
  readonly name: string;
  readonly bytes: number;
  /** Whether it is judged by the goal of a lesson: it is worked on. */
  readonly worked: boolean;
}

/**
 * JavaScript of every lesson and of a drill of each kind until the first step can be worked, and of the pages between. A kind that the room does not
 * offer, and drills of one step, are told apart: what works the steps before comes first.
 */
export async function pageSizes(browser: Browser, address: string): Promise<readonly PageSize[]> {
  const all: PageSize[] = [];
  async function measure(
    name: string,
    path: string,
    begin?: 'Start at once' | 'Begin',
    judged = begin !== undefined,
  ): Promise<void> {
    const { page, scripts } = await openFresh(browser, address, path);
    if (begin) await setToWork(page, begin);
    all.push({ name, bytes: await scripts.total(page), worked: judged });
    await page.context().close();
  }
  const lessons = readdirSync(LESSONS).filter((id) => existsSync(`${LESSONS}/${id}/lesson.json`));
  for (const id of lessons) await measure(`lesson ${id}`, `/lesson/${id}/`, 'Start at once');
  for (const exercise of EXERCISES) {
    const drill = newest({ exercise, seed: 4711 % SEEDS, fabric: 'woven', band: 'usual', hints: 3 });
    const offered = ROOM_KINDS.includes(exercise);
    const name = offered ? `drill ${exercise}` : `drill ${exercise}, on a worked table`;
    await measure(name, `/practice/#${toFragment(drill)}`, 'Begin', offered);
  }
  // The last step of each kind by itself, the heaviest: a second chance begins where its lesson stood at that step.
  for (const exercise of EXERCISES) {
    const step = stepCount(exercise);
    const drill = newest({ exercise, seed: 4711 % SEEDS, fabric: 'woven', band: 'usual', hints: 1, step });
    await measure(`one step: ${exercise}, ${step}`, `/practice/#${toFragment(drill)}`, 'Begin', false);
  }
  await measure('practice room', '/practice/');
  await measure('progress', '/progress/');
  await measure('watch an attempt', '/attempt/');
  return all;
}
