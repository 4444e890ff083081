import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Page } from '@playwright/test';
import { BUILD, onSite } from './site.ts';

const GOAL = { home: 45, lesson: 110 } as const;

const gzipped = (body: Buffer): number => gzipSync(body, { level: 9 }).length;

/** JavaScript that a page asked for so far: size gzipped in bytes by path. */
class Scripts {
  readonly sizes = new Map<string, number>();
  readonly #reading: Promise<void>[] = [];

  constructor(page: Page) {
    page.on('response', (response) => {
      const { pathname } = new URL(response.url());
      if (!/javascript/.test(response.headers()['content-type'] ?? '')) return;
      this.#reading.push(response.body().then((body) => void this.sizes.set(pathname, gzipped(body))));
    });
  }
  /** Bytes, gzipped, once the network has been quiet. */
  async total(page: Page): Promise<number> {
    await page.waitForLoadState('networkidle');
    await Promise.all(this.#reading);
    return [...this.sizes.values()].reduce((sum, size) => sum + size, 0);
  }
}

export interface Sizes {
  readonly home: number;
  /** The home page of someone who has practised: it reckons what is due. */
  readonly homeLater: number;
  /** Until the opening of the lesson is shown, and until the first step can be worked. */
  readonly opening: number;
  readonly lesson: number;
  /** What comes with the first mark; all that is fetched only when it is wanted; the service worker. */
  readonly withMark: number;
  readonly onDemand: number;
  readonly worker: number;
}

/** Bytes of JavaScript, gzipped, that a fresh browser really asks for. The service worker is kept out: it fetches everything. */
export function sizes(): Promise<Sizes> {
  return onSite(async (browser, address) => {
    const open = async (path: string): Promise<{ page: Page; scripts: Scripts }> => {
      const context = await browser.newContext({ baseURL: address, serviceWorkers: 'block' });
      const page = await context.newPage();
      const scripts = new Scripts(page);
      await page.goto(path);
      await page.getByRole('heading', { level: 1 }).waitFor();
      return { page, scripts };
    };
    const first = await open('/');
    const home = await first.scripts.total(first.page);

    const { page, scripts } = await open('/lesson/slanted-seam/');
    const opening = await scripts.total(page);
    await page.getByRole('button', { name: 'Start at once' }).click();
    // The step can be worked once there is something to take hold of.
    await page.locator('[data-target]').first().waitFor();
    await page.getByRole('button', { name: 'Check', exact: true }).waitFor();
    const lesson = await scripts.total(page);
    await page.getByRole('button', { name: 'Check', exact: true }).click();
    await page.locator('[data-verdict]').waitFor();
    const withMark = (await scripts.total(page)) - lesson;

    // The mark is written down after it is shown; a page of the same browser then finds it.
    const later = await page.context().newPage();
    const laterScripts = new Scripts(later);
    await later.goto('/');
    await later.getByText('Nothing is due today').waitFor();
    const homeLater = await laterScripts.total(later);

    const folder = join(BUILD, '_app', 'immutable');
    const files = readdirSync(folder, { recursive: true })
      .map(String)
      .filter((name) => name.endsWith('.js'));
    const all = files.reduce((sum, name) => sum + gzipped(readFileSync(join(folder, name))), 0);
    const worker = gzipped(readFileSync(join(BUILD, 'service-worker.js')));
    return { home, homeLater, opening, lesson, withMark, onDemand: all - lesson, worker };
  });
}

const kb = (bytes: number): string => `${(bytes / 1000).toFixed(1)} KB`;

/** Prints part (d). */
export async function printSizes(): Promise<boolean> {
  const { home, homeLater, opening, lesson, withMark, onDemand, worker } = await sizes();
  const verdict = (bytes: number, goal: number): string =>
    `goal ${goal} KB: ${bytes <= goal * 1000 ? 'met' : 'NOT met'}`;
  console.log(
    '\n(d) JavaScript, gzipped (level 9), that a fresh headless browser asks for; KB of 1000 bytes',
  );
  console.log(`    home page: ${kb(home)}   ${verdict(home, GOAL.home)}`);
  console.log(`      of someone who has practised, with what is due: ${kb(homeLater)}   no goal set`);
  console.log(
    `    lesson page, until the first step can be worked: ${kb(lesson)}   ${verdict(lesson, GOAL.lesson)}`,
  );
  console.log(`      of which until its opening is shown: ${kb(opening)}`);
  console.log(
    `    later, when wanted: ${kb(onDemand)} in all, ${kb(withMark)} of it with the first mark; service worker ${kb(worker)}`,
  );
  return home <= GOAL.home * 1000 && lesson <= GOAL.lesson * 1000;
}

if (process.argv[1]?.endsWith('bench/sizes.ts')) await printSizes();
