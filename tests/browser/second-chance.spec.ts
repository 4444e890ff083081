import { expect, test, type Page } from '@playwright/test';
import { workedLesson } from '../../src/lib/lessons/worked/index.ts';
import { logToText } from '../../src/lib/progress/log-file.ts';
import type { ProgressEvent } from '../../src/lib/progress/events.ts';
import { apply } from '../../src/lib/recipe/apply.ts';
import type { Command, Work } from '../../src/lib/recipe/types.ts';
import { DAY, wrong } from '../practice/history.ts';
import { errorsOf } from './support/attempt.ts';
import { expectNoViolation } from './support/axe.ts';
import { fileOf, lessonOf, typeStep } from './support/drill.ts';
import { Keys } from './support/keys.ts';

/* Which drill isolates what, and what is still to be made good, is held in tests/practice; here that the pages lead there and back. */

/** A side dart that is finished where it lies, pressed downwards. */
const FRAGMENT = '2.finish.1.woven.usual.3.any';
const OTHER_FOLD = 'the cap was drawn for another fold';

/** The cap drawn for a fold that was not asked for, whichever was. */
const otherFold = (commands: readonly Command[]): readonly Command[] =>
  commands.map((one) => (one.do === 'cap' ? { ...one, fold: one.fold === 'up' ? 'down' : 'up' } : one));

/** The drill that the page shows, as its link has it: the address follows what was pressed a little later. */
async function drillOf(page: Page): Promise<string> {
  await expect(page).toHaveURL(/\/practice\/?#[1-9]\./);
  return new URL(page.url()).hash.slice(1);
}

const chances = (page: Page) => page.getByRole('region', { name: 'Second chances' });
const mark = (page: Page) => page.locator('[data-verdict]');
/** What the page shows; a screen reader is told the same beside it. */
const shown = (page: Page, text: string) => page.locator('#main').getByText(text);

/** The table after some commands, all of which have to be followed. */
const after = (start: Work, commands: readonly Command[]): Work =>
  commands.reduce((table, command) => {
    const next = apply(table, command);
    if ('refused' in next) throw new Error(JSON.stringify(next.refused));
    return next.work;
  }, start);

/** Works the drill that is open, step by step, by keys; `edit` makes the mistake. Stops at the last mark. */
async function work(page: Page, keys: Keys, edit = (commands: readonly Command[]) => commands) {
  const { lesson, parsed } = lessonOf(await drillOf(page));
  const { start, commands } = workedLesson(lesson, parsed.ok.fabric);
  await keys.button('Begin');
  const given = new Set(lesson.given?.map(({ id }) => id));
  let table = after(
    start,
    commands.filter(({ step }) => given.has(step!)),
  );
  for (const [i, { id }] of lesson.steps.entries()) {
    const typed = await typeStep(page, keys, id, edit(commands), table, lesson.scale);
    table = typed.work;
    if (i === lesson.steps.length - 1) return typed;
    expect(typed.verdict, `${id}: ${typed.off.join(' | ')}`).toBe('accepted');
    await keys.button('Next step');
  }
  throw new Error('no steps');
}

test('by keys: a mistake in a drill, the short drill for it, and the credit is restored', async ({
  page,
}) => {
  const errors = errorsOf(page);
  const keys = new Keys(page);
  await page.goto(`/practice/#${FRAGMENT}`);
  await page.getByRole('button', { name: 'Begin' }).waitFor();
  const made = await work(page, keys, otherFold);
  expect(made.verdict).toBe('needsWork');
  await expect(mark(page)).toContainText(
    `The cap was drawn for another fold. Doing it right restores the credit.`,
  );
  await keys.to('a', 'A short drill for this');
  await keys.press('Enter');

  // Another drill, of that step alone: what it is for is said before it and in it.
  await expect(page.locator('.task')).toContainText(
    'One step, and no more: cap the dart. What comes before it is done.',
  );
  await expect(page).toHaveURL(/#4\.finish\.\d+\.woven\.usual\.1\.any\.5$/);
  expect(page.url()).not.toContain('finish.1.woven');
  await expect(page.getByText(`Second chance for: ${OTHER_FOLD}.`)).toBeVisible();
  expect((await work(page, keys)).verdict).toBe('accepted');
  // Already now, for who does not finish but goes straight back.
  await expect(shown(page, `The credit is restored for what was off before: ${OTHER_FOLD}.`)).toBeVisible();
  await expect(page.getByRole('link', { name: 'Back to that drill' })).toHaveAttribute(
    'href',
    /^#2\.finish\.1\.woven\.usual\.3\.any$/,
  );
  await keys.button('Finish');
  await expect(shown(page, `The credit is restored for what was off before: ${OTHER_FOLD}.`)).toBeVisible();
  // It is over: nothing is offered that would do nothing.
  await expect(page.locator('[data-typed]')).toHaveCount(0);
  for (const name of ['Check', 'A hint', 'Show me how, on my own table'])
    await expect(page.getByRole('button', { name, exact: true })).toHaveCount(0);

  // Once and for good: the room has it no more, and the progress tells it.
  await keys.to('a', 'Another drill');
  await keys.press('Enter');
  await expect(page.getByRole('heading', { name: 'Make a drill' })).toBeVisible();
  await page.waitForLoadState('networkidle');
  await expect(chances(page)).toHaveCount(0);
  await page.goto('/progress/');
  const skill = page.locator('[data-skill="side/drawn/cap"]');
  await skill.locator('summary').click();
  await expect(skill).toContainText('one mark with mistakes, made good by a second chance');
  expect(errors).toEqual([]);
});

test('by keys: who goes straight back from a second chance that was right has the credit too', async ({
  page,
}) => {
  const keys = new Keys(page);
  await page.goto(`/practice/#${FRAGMENT}`);
  await page.getByRole('button', { name: 'Begin' }).waitFor();
  await work(page, keys, otherFold);
  await keys.to('a', 'A short drill for this');
  await keys.press('Enter');
  await expect(page.getByText(`Second chance for: ${OTHER_FOLD}.`)).toBeVisible();
  expect((await work(page, keys)).verdict).toBe('accepted');
  await expect(shown(page, 'The credit is restored')).toBeVisible();
  await keys.to('a', 'Back to that drill');
  await keys.press('Enter');
  await keys.button('Go on');
  await expect(mark(page)).toContainText(
    `Your short drill was right, so the credit is restored for what was off here: ${OTHER_FOLD}.`,
  );
});

const NOW = Date.now();
const drill = (id: string) => ({ exercise: { kind: 'drill' as const, id, content: 1 } });
const lesson = (id: string, step: string) => ({
  exercise: { kind: 'lesson' as const, id, content: 1 },
  step,
});
const CAP = wrong(NOW - DAY, {
  ...drill('drill-2-finish-1-woven-usual-3-any'),
  step: 'cap',
  skill: 'side/drawn/cap',
  codes: ['dart-finished/cap'],
});
const HISTORY: readonly ProgressEvent[] = [
  CAP,
  wrong(NOW - 2 * DAY, {
    ...lesson('waist-to-shoulder', 'move'),
    skill: 'waist-to-shoulder/slash/plain',
    codes: ['dart-moved/opening', 'dart-moved/residual'],
  }),
  wrong(NOW - 3 * DAY, {
    ...lesson('slanted-seam', 'connectors'),
    skill: 'connector',
    codes: ['connectors/foot'],
  }),
  wrong(NOW - 4 * DAY, {
    ...lesson('slanted-seam', 'label-and-grain'),
    skill: 'label-grain',
    codes: ['labels/name'],
  }),
  wrong(NOW - 5 * DAY, {
    ...lesson('french-dart', 'working-dart'),
    skill: 'working-dart',
    codes: ['darts-extended/tip'],
  }),
];

async function bring(page: Page, log: readonly ProgressEvent[]): Promise<void> {
  await page.goto('/');
  await page.waitForLoadState('networkidle');
  const text = logToText({ log, course: { done: {}, testedOut: {} } });
  const file = { name: 'mine.progress.json', mimeType: 'application/json', buffer: Buffer.from(text) };
  await page.getByLabel('Progress file').setInputFiles(file);
  await expect(page.getByText(/entr(y is|ies are) new/)).toBeVisible();
}
/** Opens the drill that is shown, solved, and marks its last step. */
async function solved(page: Page): Promise<void> {
  await page.getByLabel('Attempt file').setInputFiles(fileOf(await drillOf(page)));
  await expect(page.locator('nav button[data-step="cap"]')).toHaveAttribute('aria-current', 'step');
  await page.getByRole('button', { name: 'Check', exact: true }).click();
  await expect(mark(page)).toHaveAttribute('data-verdict', 'accepted');
}

test('the room lists the newest three and says where they were made', async ({ page }) => {
  const errors = errorsOf(page);
  await bring(page, HISTORY);
  await page.goto('/practice/');
  await expect(chances(page).getByRole('listitem')).toHaveCount(3);
  await expect(chances(page).getByRole('listitem').first()).toContainText(
    'The cap was drawn for another fold',
  );
  await expect(chances(page)).toContainText(
    'In a drill, yesterday: Side dart, drawn in its place, with its folded cap.',
  );
  // Also what was off in finishing a piece has its drill.
  await expect(chances(page)).toContainText('2 more wait behind these.');
  await page
    .getByRole('link', { name: /^A short drill for this: the legs of the dart|: the opening/ })
    .click();
  await expect(page.locator('.task')).toContainText(/shoulder/);
  await expect(
    page.getByText(
      'Second chance for: the opening was wider or narrower than the dart makes it, and the legs',
    ),
  ).toBeVisible();
  await expect(page.getByRole('link', { name: 'Back to that step of the lesson' })).toHaveAttribute(
    'href',
    /\/lesson\/waist-to-shoulder#move$/,
  );
  expect(errors).toEqual([]);
});

test('with the solution shown it does not count, and another drill is offered that does', async ({
  page,
}) => {
  const errors = errorsOf(page);
  await bring(page, [CAP]);
  await page.goto('/practice/');
  await chances(page).getByRole('link').click();
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.getByRole('button', { name: 'Show me how, on my own table' }).click();
  await page.getByRole('button', { name: 'To my own table' }).click();
  const first = page.url();
  await solved(page);
  await page.getByRole('button', { name: 'Finish' }).click();
  await expect(shown(page, 'The solution was shown in this drill, so the credit waits')).toBeVisible();
  await page.getByRole('link', { name: 'Another short drill for this' }).click();
  await expect(page.getByRole('button', { name: 'Begin' })).toBeVisible();
  expect(page.url()).not.toBe(first);

  // A hint is told beside the mark and leaves the credit.
  await page.getByRole('button', { name: 'Begin' }).click();
  const fragment = await drillOf(page);
  const uncapped = fileOf(fragment, (all) => all.filter((one) => one.do !== 'cap'));
  await page.getByLabel('Attempt file').setInputFiles(uncapped);
  await expect(mark(page)).toHaveCount(0);
  await page.getByRole('button', { name: 'Check', exact: true }).click();
  await page.getByRole('button', { name: 'A hint', exact: true }).click();
  const keys = new Keys(page);
  const { lesson: asked, parsed } = lessonOf(fragment);
  const { start, commands } = workedLesson(asked, parsed.ok.fabric);
  const before = after(
    start,
    commands.filter(({ step }) => step !== 'cap'),
  );
  const typed = await typeStep(page, keys, 'cap', commands, before, asked.scale);
  expect(typed.verdict).toBe('accepted');
  await expect(mark(page)).toContainText('With 1 hint.');
  await page.getByRole('button', { name: 'Finish' }).click();
  await expect(shown(page, 'The credit is restored')).toBeVisible();

  // The link of a mistake that is made good says so.
  await page.goto(`/practice/#chance=${CAP.id}/dart-finished/cap`);
  await expect(page.getByRole('alert')).toContainText('made good already');
  expect(errors).toEqual([]);
});

test('each area of a mark has its drill, and where the mistake was made it is told that its credit is back', async ({
  page,
}) => {
  const errors = errorsOf(page);
  const keys = new Keys(page);
  const record = page.locator('[data-record][aria-busy="false"]');
  const drills = record.getByRole('link', { name: 'A short drill for this' });
  await page.goto('/lesson/clustered-darts/');
  await page.getByRole('button', { name: 'Start at once' }).click();
  await page
    .getByLabel('Attempt file')
    .setInputFiles(
      'lessons/clustered-darts/04-finish/attempts/fail-dart-finished-point-one-left-at-the-bust-point.attempt.json',
    );
  await expect(page.locator('nav button[data-step="finish"]')).toHaveAttribute('aria-current', 'step');
  await page.getByRole('button', { name: 'Check', exact: true }).click();
  await expect(record).toContainText('Each has its own short drill');
  await expect(drills).toHaveCount(2);
  await drills.and(page.getByRole('link', { name: /backed off farther/ })).click();

  await page.getByRole('button', { name: 'Begin' }).click();
  await page.getByLabel('Attempt file').setInputFiles(fileOf(await drillOf(page)));
  await expect(page.locator('nav button[aria-current="step"]')).toHaveAttribute('data-step', 'sewn-point');
  await page.getByRole('button', { name: 'Check', exact: true }).click();
  await expect(mark(page)).toHaveAttribute('data-verdict', 'accepted');
  await keys.button('Finish');
  const box = page.locator('.done');
  await expect(box).toContainText('The credit is restored for what was off before: the dart was backed off');
  await expect(box).not.toContainText('result sheet');
  // The way back comes first, and once.
  const ways = box.getByRole('link').or(box.getByRole('button'));
  await expect(ways.first()).toHaveText('Back to that step of the lesson');
  await expect(page.getByRole('link', { name: 'Back to that step of the lesson' })).toHaveCount(1);
  await expect(box).toBeFocused();
  await page.keyboard.press('Tab');
  await expect(ways.first()).toBeFocused();
  await page.keyboard.press('Enter');

  await expect(page).toHaveURL(/lesson\/clustered-darts\/?#finish$/);
  await expect(record).toContainText(
    'Your short drill was right, so the credit is restored for what was off here: the dart was backed off',
  );
  await expect(record).toContainText('On this table it is still to be mended.');
  await expect(drills).toHaveCount(1);
  expect(errors).toEqual([]);
});

test('where the browser keeps nothing, it lasts as long as the page', async ({ page }) => {
  const errors = errorsOf(page);
  await page.addInitScript(() => {
    const no = () => {
      throw new DOMException('not allowed here', 'SecurityError');
    };
    IDBFactory.prototype.open = no;
    for (const name of ['getItem', 'setItem'] as const) Storage.prototype[name] = no;
  });
  await page.goto(`/practice/#${FRAGMENT}`);
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.getByLabel('Attempt file').setInputFiles(fileOf(FRAGMENT, otherFold));
  await expect(page.locator('nav button[data-step="cap"]')).toHaveAttribute('aria-current', 'step');
  await page.getByRole('button', { name: 'Check', exact: true }).click();
  await page.getByRole('link', { name: 'A short drill for this' }).click();
  await page.getByRole('button', { name: 'Begin' }).click();
  await expect(page.getByText(`Second chance for: ${OTHER_FOLD}.`)).toBeVisible();
  await solved(page);
  await page.getByRole('button', { name: 'Finish' }).click();
  await expect(shown(page, 'The credit is restored')).toBeVisible();
  expect(errors).toEqual([]);
});

for (const [name, viewport] of [
  ['desk', { width: 1440, height: 900 }],
  ['tablet', { width: 820, height: 1180 }],
  ['phone', { width: 390, height: 844 }],
] as const)
  for (const colorScheme of ['light', 'dark'] as const)
    test.describe(`${name}, ${colorScheme}`, () => {
      test.use({ viewport, colorScheme });
      test('axe finds nothing in the room, before the drill and in it', async ({ page }) => {
        await bring(page, HISTORY);
        await page.goto('/practice/');
        await chances(page).waitFor();
        await expectNoViolation(page, 'room');
        await chances(page).getByRole('link').first().click();
        await page.getByRole('button', { name: 'Begin' }).waitFor();
        await expectNoViolation(page, 'opening');
        await page.getByRole('button', { name: 'Begin' }).click();
        const fragment = await drillOf(page);
        await page.getByLabel('Attempt file').setInputFiles(fileOf(fragment, otherFold));
        await expect(page.locator('nav button[data-step="cap"]')).toHaveAttribute('aria-current', 'step');
        await page.getByRole('button', { name: 'Check', exact: true }).click();
        await page.getByRole('button', { name: 'A hint', exact: true }).click();
        await page.getByRole('button', { name: 'Check', exact: true }).click();
        await expect(mark(page)).toContainText('With 1 hint.');
        await expect(page.getByRole('link', { name: 'A short drill for this' })).toBeVisible();
        await expectNoViolation(page, 'mark');
        await page.getByLabel('Attempt file').setInputFiles(fileOf(fragment));
        await expect(mark(page)).toHaveCount(0);
        await page.getByRole('button', { name: 'Check', exact: true }).click();
        await page.getByRole('button', { name: 'Finish' }).click();
        await shown(page, 'The credit is restored').scrollIntoViewIfNeeded();
        await expectNoViolation(page, 'finished');
      });
    });
