import { expect, test, type Page } from '@playwright/test';
import { sampleAttempt } from '../recipe/sample.ts';
import { enter, lesson, openAttempt } from './support/attempt.ts';
import { Keys } from './support/keys.ts';

/* What someone who works by keys alone is told of them, and what the keys do that hold for the whole board. */

const said = (page: Page) => page.locator('[data-announcer]');
async function withNotches(page: Page): Promise<Keys> {
  await enter(page);
  await openAttempt(page, sampleAttempt(lesson.figure, 'knit', { upTo: 'notches' }));
  return new Keys(page);
}

test('what was done, taken back and done again is said, and has its keys', async ({ page }) => {
  const keys = await withNotches(page);
  const n1 = page.locator('[data-target="notch:n1"]');
  await keys.handle('notch:n1');
  await keys.press('Delete');
  await expect(said(page)).toHaveText(/^Done: Take notch n1 away\./);
  await expect(n1).toHaveCount(0);
  await keys.press('Control+z');
  await expect(said(page)).toHaveText(/^Taken back: Take notch n1 away\./);
  await expect(n1).toHaveCount(1);
  await keys.press('Control+y');
  await expect(said(page)).toHaveText(/^Done again: Take notch n1 away\./);
  await expect(n1).toHaveCount(0);
  await keys.press('Control+z');
  await keys.press('Control+Shift+Z');
  await expect(n1).toHaveCount(0);

  // What is typed has its own taking back; sent, it is told like anything else.
  await keys.unfold('By typed values');
  await keys.type('[id="notch-at"]', '120');
  await keys.press('Control+z');
  await expect(n1).toHaveCount(0);
  await keys.give({ form: 'notch', values: { at: '120' } });
  await expect(said(page)).toHaveText(/^Done: Mark notch n1 across the line, at [\d.]+ % of its length\./);
});

test('a handle that goes with what was taken back leaves the keyboard with the table', async ({ page }) => {
  const keys = await withNotches(page);
  await keys.pick('new:right');
  await keys.press('Shift+ArrowLeft', 2);
  await keys.press('Enter');
  await keys.handle('notch:n5');
  await keys.press('Control+z');
  await expect(page.locator('[data-target="notch:n5"]')).toHaveCount(0);
  await expect(page.locator('.desk svg')).toBeFocused();
});

test('what goes with a mark or with its own work leaves the keyboard with the table too', async ({
  page,
}) => {
  const keys = new Keys(page);
  const lesson = 'lessons/mid-armhole-by-pivot/01-working-dart/attempts';
  await page.goto('/lesson/mid-armhole-by-pivot/');
  await keys.button('Start at once');
  await page.getByLabel('Attempt file').setInputFiles(`${lesson}/pass-to-the-bust-point.attempt.json`);
  await keys.button('Check');
  await keys.button('Next step');
  // The edges go once one of them is marked: the mark is no command yet, and is said all the same.
  await keys.pick('mark:right/armhole');
  await expect(said(page)).toHaveText(/^Marked: right armhole\./);
  await expect(page.locator('.desk svg')).toBeFocused();
  await keys.act('swing:right/waist-dart');
  await expect(said(page)).toHaveText(/^Done: Pin the block at the right bust point/);
  await expect(page.locator('.desk svg')).toBeFocused();
});

test('F6 goes past the handles, and comes back to where it was', async ({ page }) => {
  const keys = await withNotches(page);
  const held = page.locator(':focus');
  await keys.handle('notch:n3');
  await keys.press('F6');
  await expect(held).toHaveText('4. Mark the notches');
  await keys.press('Tab');
  await expect(held).toHaveText('Check');
  await keys.press('F6');
  await expect(held).toHaveAttribute('aria-current', 'step');
  await keys.press('F6');
  await expect(held).toHaveAttribute('data-target', 'notch:n3');
  await keys.press('Shift+F6');
  await expect(held).toHaveAttribute('aria-current', 'step');
  await keys.press('Shift+F6');
  await expect(held).toHaveText('Check');
});

test('the keys are shown to those who work by them, and heard with the table', async ({ page }) => {
  const keys = await withNotches(page);
  const table = page.locator('.desk svg');
  const shown = () =>
    page.locator('#table-keys').evaluate((one) => getComputedStyle(one).clipPath === 'none');
  await page.getByRole('button', { name: 'Check', exact: true }).click();
  expect(await shown()).toBe(false);
  await keys.handle('notch:n3');
  expect(await shown()).toBe(true);
  await expect(table).toHaveAccessibleDescription(/Tab moves among the handles.*F6.*Ctrl\+Z/);
  await keys.press('F6');
  expect(await shown()).toBe(false);
});

test('a handle that the keyboard comes to is brought into sight, also where the table is looked at from near', async ({
  page,
}) => {
  const keys = await withNotches(page);
  await keys.handle('notch:n1');
  await keys.press('+', 7);
  for (const id of ['notch:n4', 'notch:n1', 'notch:n3']) {
    await keys.handle(id);
    const [box, desk] = [
      await page.locator(':focus').boundingBox(),
      await page.locator('.desk').boundingBox(),
    ];
    const middle = { x: box!.x + box!.width / 2, y: box!.y + box!.height / 2 };
    expect(middle.x, id).toBeGreaterThan(desk!.x);
    expect(middle.x, id).toBeLessThan(desk!.x + desk!.width);
    expect(middle.y, id).toBeGreaterThan(desk!.y);
    expect(middle.y, id).toBeLessThan(desk!.y + desk!.height);
  }
});

test('a hint is said, and each “Show where” says of what', async ({ page }) => {
  const keys = new Keys(page);
  await page.goto('/lesson/waist-to-side/');
  await keys.button('Start at once');
  await page
    .getByLabel('Attempt file')
    .setInputFiles(
      'lessons/waist-to-side/01-working-dart/attempts/fail-darts-extended-tip-beside.attempt.json',
    );
  await keys.button('Check');
  await keys.to('button', 'Show where');
  await expect(page.locator(':focus')).toHaveAccessibleDescription(/^Off: .*mm/);
  await keys.button('A hint');
  const hint = page.getByRole('region', { name: 'Hints' }).getByRole('listitem').first();
  await expect(said(page)).toHaveText(await hint.innerText());
});

const wrong = { name: 'a.json', mimeType: 'application/json', buffer: Buffer.from('{}') };
for (const [where, path, label, back] of [
  ['a lesson', '/lesson/waist-to-side/', 'Attempt file', 'My work'],
  ['the progress page', '/progress/', 'Progress file', 'Add progress from a file'],
  ['the page of attempts', '/attempt/', 'Attempt file', 'Open a file'],
] as const)
  test(`a notice that was read gives the keyboard back on ${where}`, async ({ page }) => {
    const keys = new Keys(page);
    await page.goto(path);
    if (where === 'a lesson') await keys.button('Start at once');
    await keys.to('button, summary', back);
    await page.getByLabel(label).setInputFiles(wrong);
    await expect(page.getByRole('alert')).toContainText(/The (file|attempt) was not/);
    await keys.button('All right');
    await expect(page.getByRole('alert')).toHaveCount(0);
    await expect(page.locator(':focus')).toHaveText(back);
  });

test('Escape leads back from what is watched, and folds up the sheet before that', async ({ page }) => {
  const keys = await withNotches(page);
  const back = page.getByRole('button', { name: 'To my own table' });
  await keys.button('Show me how, on my own table');
  await back.waitFor();
  await keys.to('summary', 'My work');
  await keys.press('Enter');
  await page.getByRole('button', { name: 'Go through what I did' }).waitFor();
  await keys.press('Escape');
  await expect(page.getByRole('button', { name: 'Go through what I did' })).toHaveCount(0);
  await expect(back).toHaveCount(1);
  await keys.to('[type="range"]');
  await keys.press('Escape');
  await expect(back).toHaveCount(0);
  await expect(page.locator(':focus')).toHaveText('4. Mark the notches');
});

test('who turns to the test, or back from it, is led to what it says', async ({ page }) => {
  const keys = new Keys(page);
  await page.goto('/lesson/waist-to-side/');
  await page.getByRole('button', { name: 'Test out' }).waitFor();
  await keys.button('Test out');
  await page.getByRole('button', { name: 'Begin the test' }).waitFor();
  await expect(page.locator('#main')).toBeFocused();
  await keys.button('To the lesson instead');
  await page.getByRole('button', { name: 'Start at once' }).waitFor();
  await expect(page.locator('#main')).toBeFocused();
});

test('the seam that is chosen to be walked is told with its lengths', async ({ page }) => {
  await enter(page);
  await openAttempt(page, sampleAttempt(lesson.figure, 'knit', { upTo: 'label-and-grain' }));
  const keys = new Keys(page);
  await keys.button('Check');
  await keys.button('Next step');
  await page.getByRole('group', { name: 'style line, walked' }).waitFor();
  await keys.pick('group:upper:right/shoulder');
  const walked = page.getByRole('group', { name: 'right shoulder seam, walked' });
  const [a, b] = (await walked.locator('p').innerText()).match(/[\d.]+ mm/g)!;
  await expect(said(page)).toHaveText(new RegExp(`^right shoulder seam: ${a} and ${b}\\. start to end`));
});
