import { readFileSync } from 'node:fs';
import { expect, test, type Page } from '@playwright/test';
import { workedLesson } from '../../src/lib/lessons/worked/index.ts';
import { logToText } from '../../src/lib/progress/log-file.ts';
import { DAY, wrong } from '../practice/history.ts';
import { errorsOf } from './support/attempt.ts';
import { lessonOf, typeStep } from './support/drill.ts';
import { Keys } from './support/keys.ts';

/* Each room of the site walked by real keys; the keyboard is never left nowhere, and what has it is seen to have it. */

/** Something on the page has the keyboard, and shows it by a frame. */
async function expectHeld(page: Page): Promise<void> {
  const held = () =>
    page.evaluate(() => {
      const now = document.activeElement;
      if (!now || now === document.body) return 'nothing';
      return getComputedStyle(now).outlineStyle === 'none' ? `unseen ${now.tagName} ${now.id}` : 'seen';
    });
  await expect.poll(held).toBe('seen');
}

/** Presses a button whose name is partly for the ear only. */
async function enter(keys: Keys, css: string, name: string): Promise<void> {
  await keys.to(css);
  await expect(keys.page.locator(css)).toHaveAccessibleName(name);
  await keys.press('Enter');
}

test('the practice room: a drill is made, typed, checked and finished, and the next one begun', async ({
  page,
}) => {
  const errors = errorsOf(page);
  const keys = new Keys(page);
  await page.goto('/practice/');
  await page.getByRole('heading', { name: 'Make a drill' }).waitFor();
  await keys.to('input[name="exercise"]:checked');
  for (let i = 0; i < 11 && !(await page.locator('input[value="finish"]').isChecked()); i += 1)
    await keys.press('ArrowDown');
  await expectHeld(page);
  await keys.button('Make a drill');
  await page.getByRole('button', { name: 'Begin' }).waitFor();
  await expectHeld(page);
  await expect(page).toHaveURL(/finish/);
  const { lesson, parsed } = lessonOf(new URL(page.url()).hash.slice(1));
  const { start, commands } = workedLesson(lesson, parsed.ok.fabric);
  await keys.button('Begin');
  let table = start;
  for (const [i, { id }] of lesson.steps.entries()) {
    const typed = await typeStep(page, keys, id, commands, table, lesson.scale);
    expect(typed.verdict, `${id}: ${typed.off.join(' | ')}`).toBe('accepted');
    table = typed.work;
    await expectHeld(page);
    await keys.button(i === lesson.steps.length - 1 ? 'Finish' : 'Next step');
    await expectHeld(page);
  }

  // What can be done no more is gone, and the keyboard is not gone with it.
  for (const name of ['Check', 'Finish', 'Undo', 'Redo', 'Reset this step'])
    await expect(page.getByRole('button', { name, exact: true })).toHaveCount(0);
  await keys.to('a', 'Another drill');
  await keys.press('Enter');
  await page.getByRole('heading', { name: 'Make a drill' }).waitFor();
  await expectHeld(page);
  await keys.button('Make a drill');
  await keys.button('Begin');
  await page.getByRole('button', { name: 'Check', exact: true }).waitFor();
  expect(errors).toEqual([]);
});

test('the bench: a work is kept and named, renamed, put into the bin and taken out of it', async ({
  page,
}) => {
  const errors = errorsOf(page);
  const keys = new Keys(page);
  await page.goto('/bench/');
  await page.getByRole('button', { name: 'Lay it on the bench' }).waitFor();
  await keys.button('Lay it on the bench');
  await page.locator('[data-invariants="angle"]').waitFor();
  await expectHeld(page);
  await keys.type('#work-name', 'By keys');
  await keys.press('Enter');
  await keys.button('All works');
  await page.locator('[data-work]').waitFor();
  await expectHeld(page);

  await enter(keys, '[data-work] .acts button:nth-of-type(2)', 'Rename By keys');
  await keys.press('Control+a');
  await page.keyboard.type('Renamed');
  await keys.press('Enter');
  await expect(page.locator('[data-work]')).toContainText('Renamed');
  await expectHeld(page);
  await enter(keys, '[data-work] .acts button:nth-of-type(3)', 'Delete Renamed');
  await expect(page.getByRole('button', { name: 'Take it out again' })).toBeFocused();
  await expectHeld(page);
  await keys.unfold('In the bin (1)');
  await enter(keys, '[data-binned] .acts button:nth-of-type(1)', 'Take out Renamed');
  await expect(page.locator('[data-work]')).toContainText('Renamed');
  await expectHeld(page);
  await enter(keys, '[data-work] .acts button:nth-of-type(1)', 'Open Renamed');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Renamed');
  await expectHeld(page);
  expect(errors).toEqual([]);
});

test('an attempt: its text is put in, opened, and gone through with the arrow keys', async ({ page }) => {
  const errors = errorsOf(page);
  const keys = new Keys(page);
  const text = readFileSync('lessons/waist-to-side/04-prove/attempts/pass-on-the-block.attempt.json', 'utf8');
  await page.goto('/attempt/');
  await page.waitForFunction(() => document.documentElement.dataset['theme'] !== undefined);
  await keys.to('#attempt-text');
  // As a paste does: all at once.
  await page.keyboard.insertText(text);
  await keys.button('Open the text');
  await page.getByRole('slider').waitFor();
  await expectHeld(page);
  await keys.to('[type="range"]');
  await expectHeld(page);
  const slider = page.getByRole('slider');
  await expect(slider).toHaveValue('5');
  await keys.press('ArrowLeft', 2);
  await expect(slider).toHaveValue('3');
  await expect(slider).toHaveAttribute('aria-valuetext', /.+/);
  await keys.press('Home');
  await expect(slider).toHaveValue('0');
  await keys.press('End');
  await expect(slider).toHaveValue('5');
  expect(errors).toEqual([]);
});

test('worked on paper: the fields are found, filled and compared', async ({ page }) => {
  const errors = errorsOf(page);
  const keys = new Keys(page);
  await page.goto('/lesson/waist-to-side/');
  await page.getByRole('button', { name: 'Start at once' }).waitFor();
  await keys.button('Start at once');
  await page.getByRole('button', { name: 'Check', exact: true }).waitFor();
  await keys.to('summary', 'My work');
  await keys.press('Enter');
  await keys.button('Worked on paper');
  await expect(page.getByRole('heading', { name: 'Worked on paper' })).toBeFocused();
  await keys.select('[aria-label="Worked on paper"] select', 'move');
  await page.getByRole('textbox', { name: 'Angle of the slash' }).waitFor();
  // 25° is no dart of this block, and a leg of 150 mm is none of its legs at half scale.
  for (const [i, value] of ['25', '150'].entries()) await keys.type(`#paper-${i + 1}`, value);
  await keys.press('Enter');
  const verdict = page.getByRole('region', { name: 'What your paper says' });
  await expect(verdict).toHaveAttribute('data-verdict', 'needsWork');
  await expectHeld(page);
  expect(errors).toEqual([]);
});

test('a second chance: its link in the room leads to its drill, and the drill begins', async ({ page }) => {
  const errors = errorsOf(page);
  const keys = new Keys(page);
  const mistake = wrong(Date.now() - DAY, {
    exercise: { kind: 'drill', id: 'drill-2-finish-1-woven-usual-3-any', content: 1 },
    step: 'cap',
    skill: 'side/drawn/cap',
    codes: ['dart-finished/cap'],
  });
  await page.goto('/');
  await page.waitForLoadState('networkidle');
  const log = logToText({ log: [mistake], course: { done: {}, testedOut: {} } });
  const file = { name: 'mine.progress.json', mimeType: 'application/json', buffer: Buffer.from(log) };
  await page.getByLabel('Progress file').setInputFiles(file);
  await expect(page.getByText(/entr(y is|ies are) new/)).toBeVisible();
  await page.goto('/practice/');
  await page.getByRole('region', { name: 'Second chances' }).getByRole('link').waitFor();
  await keys.to('section:has(#second-chances) a');
  await keys.press('Enter');
  await page.getByRole('button', { name: 'Begin' }).waitFor();
  await expectHeld(page);
  await keys.button('Begin');
  await page.getByRole('button', { name: 'Check', exact: true }).waitFor();
  await expect(page.getByText(/^Second chance for:/)).toBeVisible();
  await expectHeld(page);
  expect(errors).toEqual([]);
});
