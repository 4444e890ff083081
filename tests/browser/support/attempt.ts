import { expect, type Page } from '@playwright/test';
import { loadLesson } from '../../../src/cli/load-lessons.ts';
import '../../../src/lib/recipe/commands/index.ts';
import { replay } from '../../../src/lib/recipe/replay.ts';
import { toText } from '../../../src/lib/recipe/save.ts';
import type { Attempt, Command, Work } from '../../../src/lib/recipe/types.ts';

export const lesson = loadLesson('slanted-seam')!;
export const LESSON_PATH = '/lesson/slanted-seam/';

/** The first `count` commands of an attempt, as an attempt. */
export const cutShort = (attempt: Attempt, count: number): Attempt => ({
  ...attempt,
  commands: attempt.commands.slice(0, count),
});

export const tableOf = (attempt: Attempt): Work => replay(attempt).work;

/** Where the commands of a step begin and end in the attempt's list. */
export function stretchOf(attempt: Attempt, step: string): { from: number; to: number } {
  const from = attempt.commands.findIndex((command) => command.step === step);
  return { from, to: attempt.commands.findLastIndex((command) => command.step === step) + 1 };
}

export const commandsOf = (attempt: Attempt, step: string): readonly Command[] =>
  attempt.commands.filter((command) => command.step === step);

/** Opens the lesson and starts it when it shows its opening. */
export async function enter(page: Page): Promise<void> {
  await page.goto(LESSON_PATH);
  const start = page.getByRole('button', { name: 'Start at once' });
  const check = page.getByRole('button', { name: 'Check', exact: true });
  await start.or(check).first().waitFor();
  if (await start.isVisible()) await start.click();
  await check.waitFor();
}

/** Opens an attempt from a file, as a learner does. */
export async function openAttempt(page: Page, attempt: Attempt): Promise<void> {
  const buffer = Buffer.from(toText(attempt));
  const file = { name: 'attempt.json', mimeType: 'application/json', buffer };
  await page.getByLabel('Attempt file').setInputFiles(file);
  const last = attempt.commands.at(-1)?.step ?? lesson.steps[0]!.id;
  await expect(stepButton(page, last)).toHaveAttribute('aria-current', 'step');
}

export const stepButton = (page: Page, step: string) => page.locator(`nav button[data-step="${step}"]`);

/** Checks the step and gives the verdict that is shown. */
export async function check(page: Page): Promise<string | null> {
  await page.getByRole('button', { name: 'Check', exact: true }).click();
  return page.locator('[data-verdict]').getAttribute('data-verdict');
}

/** Everything the mark says, as text, once what was recorded with it is told too. */
export async function markText(page: Page): Promise<string> {
  await page.locator('[data-verdict] [data-record][aria-busy="false"]').waitFor({ state: 'attached' });
  const text = (await page.locator('[data-verdict]').textContent()) ?? '';
  // Parts that are fetched stand between blanks that nobody sees.
  return text.replace(/\s+/g, ' ');
}

/** The pieces as they are drawn: every path with the matrices above it, but for where the table is looked at from. */
export const drawing = (page: Page): Promise<string> =>
  page.locator('.desk svg').evaluate((svg) =>
    [...svg.querySelectorAll('[data-piece] path, path.block')]
      .map((path) => {
        const above: string[] = [];
        for (let at: Element | null = path; at && at.parentElement !== svg; at = at.parentElement)
          above.push(at.getAttribute('transform') ?? '');
        return `${path.getAttribute('class')} ${path.getAttribute('d')} ${above.join('|')}`;
      })
      .join('\n'),
  );

/** The table in words. */
export async function twinText(page: Page): Promise<string> {
  return (await page.locator('details[data-twin]').textContent()) ?? '';
}

/** Collects what the page throws or writes as an error. */
export function errorsOf(page: Page): string[] {
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(`${message.text()} ${message.location().url}`);
  });
  return errors;
}
