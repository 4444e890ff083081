import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pageSizes, WORKED, type PageSize } from './pages.ts';
import { gzipped, openFresh, Scripts, setToWork } from './scripts.ts';
import { BUILD, onSite } from './site.ts';

const GOAL = { home: 45_000, lesson: WORKED } as const;

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
  /** Every lesson, drills, and the other pages. */
  readonly pages: readonly PageSize[];
}

/** Bytes of JavaScript, gzipped, that a fresh browser really asks for. The service worker is kept out: it fetches everything. */
export function sizes(): Promise<Sizes> {
  return onSite(async (browser, address) => {
    const first = await openFresh(browser, address, '/');
    const home = await first.scripts.total(first.page);

    const { page, scripts } = await openFresh(browser, address, '/lesson/slanted-seam/');
    const opening = await scripts.total(page);
    await setToWork(page, 'Start at once');
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
    const pages = await pageSizes(browser, address);
    return { home, homeLater, opening, lesson, withMark, onDemand: all - lesson, worker, pages };
  });
}

const kb = (bytes: number): string => `${(bytes / 1000).toFixed(1)} KB`;

/** Prints part (d). */
export async function printSizes(): Promise<boolean> {
  const { home, homeLater, opening, lesson, withMark, onDemand, worker, pages } = await sizes();
  const verdict = (bytes: number, goal: number): string =>
    `goal ${kb(goal)}: ${bytes <= goal ? 'met' : 'NOT met'}`;
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
  console.log('    each lesson and drill, until its first step can be worked, and the pages between:');
  for (const { name, bytes, goal } of pages)
    console.log(
      `      ${name.padEnd(32)} ${kb(bytes).padStart(8)}   ${goal === undefined ? 'no goal set' : verdict(bytes, goal)}`,
    );
  const within = pages.every(({ bytes, goal = Infinity }) => bytes <= goal);
  return home <= GOAL.home && lesson <= GOAL.lesson && within;
}

if (process.argv[1]?.endsWith('bench/sizes.ts')) await printSizes();
