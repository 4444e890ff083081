import { readFileSync } from 'node:fs';
import { expect, test } from '@playwright/test';
import { exitStatus, gradeFile } from '../../src/cli/grade.ts';
import { loadLesson } from '../../src/cli/load-lessons.ts';
import * as lesson from './support/lesson.ts';
import { Desk, type AttemptFile } from './support/table.ts';

const START = 'lessons/slanted-seam/05-working-darts/attempts/start.attempt.json';

const file = (name: string, text: string): AttemptFile => ({
  name,
  mimeType: 'application/json',
  buffer: Buffer.from(text),
});

test('an attempt that is saved is graded alike by the command line, and opens again', async ({
  page,
}, info) => {
  const desk = new Desk(page);
  await desk.startAt('05-working-darts');
  await lesson.workingDarts(desk);
  expect(await desk.check()).toBe('accepted');
  const download = page.waitForEvent('download');
  await desk.menu('Save my attempt');
  expect((await download).suggestedFilename()).toBe('slanted-seam.attempt.json');
  const saved = info.outputPath('saved.attempt.json');
  await (await download).saveAs(saved);

  const rules = loadLesson('slanted-seam')!;
  const done = rules.steps.slice(0, 5).map((step) => gradeFile(saved, rules, step.id));
  expect(done.map(({ verdict }) => verdict)).toEqual(Array(5).fill('accepted'));
  expect(exitStatus(done)).toBe(0);
  expect(gradeFile(saved, rules, 'connectors').verdict).toBe('notReady');

  await desk.push('Reset this step');
  await desk.hasDone(0);
  await desk.openAttempt(saved);
  await desk.hasDone(2);
  expect(await desk.check()).toBe('accepted');
  expect(desk.errors).toEqual([]);
});

test('a file that is broken, newer, foreign or hostile is refused with path, expected and found; the table stays', async ({
  page,
}) => {
  const desk = new Desk(page);
  await desk.startAt('05-working-darts');
  await lesson.workingDarts(desk);
  const good = readFileSync(START, 'utf8');
  const changed = (change: (attempt: Record<string, unknown>) => void): string => {
    const attempt = JSON.parse(good) as Record<string, unknown>;
    change(attempt);
    return JSON.stringify(attempt);
  };
  const commands = (attempt: Record<string, unknown>): Record<string, unknown>[] =>
    attempt['commands'] as Record<string, unknown>[];
  const bad: readonly (readonly [name: string, text: string, says: RegExp])[] = [
    ['empty', '', /expected .+, found/],
    ['truncated', good.slice(0, 900), /expected .+, found/],
    ['newer', changed((one) => (one['version'] = 99)), /version: expected .+, found 99/],
    ['of another kind', changed((one) => (one['format'] = 'shopping-list')), /format: expected .+, found/],
    [
      'of another lesson',
      changed((one) => (one['lesson'] = { id: 'another-lesson', content: 1 })),
      /lesson\.id: expected .*slanted-seam, found another-lesson/,
    ],
    [
      'with an unknown command',
      changed((one) => (commands(one)[1]!['do'] = 'set-fire-to')),
      /commands\[1\]\.do: expected .+, found .*set-fire-to/,
    ],
    [
      'with markup for a number',
      changed((one) => (commands(one)[5]!['value'] = '<img src=x onerror="window.hacked = true">')),
      /commands\[5\]\.value: expected .+, found .*<img/,
    ],
    [
      'with a prototype',
      good.replace('{', '{"__proto__": {"polluted": true}, '),
      /__proto__: expected .+, found/,
    ],
    ['too large', good + ' '.repeat(2_000_001), /expected a file of at most 2000000 bytes, found \d+ bytes/],
  ];
  const drawn = (): Promise<(string | null)[]> =>
    desk.svg.locator('path').evaluateAll((all) => all.map((path) => path.getAttribute('d')));
  const table = await drawn();
  const alert = page.getByRole('alert');
  for (const [name, text, says] of bad) {
    await test.step(name, async () => {
      await desk.offer(file(`${name}.json`, text));
      await expect(alert).toContainText('The file was not opened; the table is as it was.');
      await expect(alert).toContainText(says);
      await desk.hasDone(2);
      await desk.push('All right');
      await expect(alert).toHaveCount(0);
      expect(await drawn()).toEqual(table);
    });
  }
  expect(await page.evaluate(() => 'hacked' in window || 'polluted' in {})).toBe(false);
  expect(await desk.check()).toBe('accepted');
  expect(desk.errors).toEqual([]);
});

test('words from a file are shown as words, never run as markup', async ({ page }) => {
  const desk = new Desk(page);
  await desk.open();
  await desk.push('Start at once');
  const attempt = JSON.parse(
    readFileSync('lessons/slanted-seam/12-label-and-grain/attempts/pass-knit.attempt.json', 'utf8'),
  ) as { commands: { do: string; name?: string }[] };
  const name = '<img src=x onerror="window.hacked=1">';
  for (const command of attempt.commands) if (command.do === 'label') command.name = name;
  await desk.openAttempt(file('hostile.json', JSON.stringify(attempt)));
  await desk.onStep('Label and grain');
  await expect(desk.svg.locator('.label text').filter({ hasText: name }).first()).toBeVisible();
  await desk.unfold('By typed values');
  await expect(page.getByLabel('Name of the piece').first()).toHaveValue(name);
  await desk.unfold('What was done in this step');
  await expect(page.locator('img')).toHaveCount(0);
  expect(await page.evaluate(() => 'hacked' in window)).toBe(false);
  expect(desk.errors).toEqual([]);
});
