import { readFileSync } from 'node:fs';
import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Page } from '@playwright/test';
import '../../src/lib/recipe/commands/index.ts';
import { loadLesson } from '../../src/cli/load-lessons.ts';
import { blockOf } from '../../src/lib/lessons/block.ts';
import { workedLesson } from '../../src/lib/lessons/worked/index.ts';
import { replayDocument } from '../../src/lib/recipe/document.ts';
import type { Piece } from '../recipe/outside-measure.ts';
import { errorsOf } from './support/attempt.ts';
import { passesOf } from './support/golden.ts';
import { Keys } from './support/keys.ts';
import { toText } from '../../src/lib/recipe/save.ts';

const LESSON = 'waist-to-side';
const lesson = loadLesson(LESSON)!;

/**
 * What somebody would measure of the moved dart on half-scale paper, from the replay document alone: the ends of its legs, the length by
 * Pythagoras, the angle by the law of cosines; mm on paper and degrees.
 */
function onPaper(): { leg: number; angle: number } {
  const { commands } = workedLesson(lesson, 'woven');
  const document: unknown = replayDocument({
    ...{ format: 'pin-and-pivot/recipe', version: 1, fabric: 'woven', seed: 0 },
    block: blockOf(lesson),
    commands,
  });
  const front = (document as { pieces: readonly Piece[] }).pieces.find(({ id }) => id === 'front')!;
  const legs = front.outline
    .filter(({ role }) => role === 'dart-leg')
    .map(({ segments }) => segments[0]!.line!);
  const ends = legs.flatMap(([x0, y0, x1, y1]) => [
    { x: x0!, y: y0! },
    { x: x1!, y: y1! },
  ]);
  const apart = (p: { x: number; y: number }, q: { x: number; y: number }) =>
    Math.hypot(p.x - q.x, p.y - q.y);
  // The point that both legs have is the bust point.
  const outer = ends.filter((p) => ends.filter((q) => apart(p, q) < 1e-6).length === 1);
  const bust = ends.find((p) => !outer.includes(p))!;
  expect(outer.length).toBe(2);
  const leg = apart(bust, outer[0]!);
  const width = apart(outer[0]!, outer[1]!);
  return { leg: leg / 2, angle: (Math.acos(1 - (width / leg) ** 2 / 2) * 180) / Math.PI };
}
const { leg, angle } = onPaper();
/** Intake = 2 L sin(θ/2) (trade notes, derived), with a ruler's and a protractor's rounding. */
const intake = 2 * leg * Math.sin((angle * Math.PI) / 360);
const half = (value: number): string => String(Math.round(value * 2) / 2);

const field = (page: Page, name: string) => page.getByRole('textbox', { name });
const verdict = (page: Page) => page.getByRole('region', { name: 'What your paper says' });

async function begin(page: Page, path = `/lesson/${LESSON}/`): Promise<void> {
  await page.goto(path);
  const start = page.getByRole('button', { name: /^(Start at once|Begin)$/ });
  const check = page.getByRole('button', { name: 'Check', exact: true });
  await start.or(check).first().waitFor();
  if (await start.isVisible()) await start.click();
  await check.waitFor();
}
async function openPaper(page: Page, step?: string): Promise<void> {
  await page.getByText('My work').click();
  await page.getByRole('button', { name: 'Worked on paper' }).click();
  await expect(page.getByRole('heading', { name: 'Worked on paper' })).toBeFocused();
  if (step !== undefined) await page.getByLabel('After the step').selectOption(step);
}
const compare = (page: Page) => page.getByRole('button', { name: 'Compare', exact: true }).click();

test('what agrees is right, what is empty is not compared, and a slip in measuring is named', async ({
  page,
}) => {
  const errors = errorsOf(page);
  await begin(page);
  await openPaper(page, 'move');
  await compare(page);
  await expect(page.locator('.panel').getByText('Nothing is measured yet')).toBeVisible();

  await field(page, 'Angle of the slash').fill(half(angle));
  await field(page, 'Leg of the slash').fill(half(leg).replace('.', ','));
  await field(page, 'Intake of the slash').fill(half(intake));
  await compare(page);
  await expect(verdict(page)).toHaveAttribute('data-verdict', 'accepted');
  await expect(verdict(page)).toContainText('3 things were right');

  // The full size instead of half: exactly twice.
  await field(page, 'Leg of the slash').fill(String(2 * leg));
  await expect(verdict(page)).toContainText('A field changed since');
  await field(page, 'Angle of the slash').fill('');
  await compare(page);
  await expect(verdict(page)).toHaveAttribute('data-verdict', 'needsWork');
  // The ruler lies on half-scale paper, whatever the table's lengths are.
  await expect(verdict(page)).toContainText('Lengths are as on half-scale paper.');
  const wrong = verdict(page).locator('[data-code="paper/leg-length"]');
  await expect(wrong).toContainText('tolerance 0.8 mm');
  await expect(wrong).toContainText('Half scale and full size seem to be mixed up.');
  await expect(verdict(page)).toContainText('1 thing was right');

  // A dart of another length that agrees with itself: 25° at L 150 is 64.93 (trade notes, derived).
  for (const [name, value] of [
    ['Angle', '25'],
    ['Leg', '150'],
    ['Intake', '64.93'],
  ] as const)
    await field(page, `${name} of the slash`).fill(value);
  await compare(page);
  await expect(verdict(page).locator('[data-code="paper/agrees"].note')).toContainText(
    'agree with each other',
  );

  await field(page, 'Angle of the slash').fill('');
  await field(page, 'Leg of the slash').fill(half(intake));
  await compare(page);
  await expect(wrong).toContainText('That is the intake of this dart, not its leg.');

  // What cannot be read is said with where, what was expected and what was found; the others are compared.
  await field(page, 'Intake of the slash').fill(half(intake));
  await field(page, 'Leg of the slash').fill('long');
  await compare(page);
  await expect(verdict(page)).toHaveAttribute('data-verdict', 'accepted');
  await expect(verdict(page)).toContainText('1 thing was right');
  const unread = page.getByRole('region', { name: 'What cannot be read' });
  await expect(unread).toContainText('One field cannot be read. The others are compared.');
  await expect(unread.getByRole('listitem')).toContainText(
    /front, Leg of the slash: expected millimetres, such as 65 or 65\.5; found “long”\./,
  );
  await unread.getByRole('button', { name: 'To the field' }).click();
  await expect(field(page, 'Leg of the slash')).toBeFocused();
  await expect(field(page, 'Leg of the slash')).toHaveAccessibleDescription(/Give millimetres/);
  // Nothing else is filled in: then nothing is compared, and the field has the keyboard.
  await field(page, 'Intake of the slash').fill('');
  await field(page, 'Leg of the slash').fill('longer');
  await compare(page);
  await expect(verdict(page)).toHaveCount(0);
  await expect(unread).toContainText('found “longer”');
  await expect(field(page, 'Leg of the slash')).toBeFocused();
  await field(page, 'Leg of the slash').fill(half(leg));
  await expect(unread).toHaveCount(0);
  expect(errors).toEqual([]);
});

test('it is kept on the device, shown in other units, and comes into no file', async ({ page }, info) => {
  await begin(page);
  await openPaper(page, 'move');
  // 2 9/16 in = 65.0875 mm (definition of the inch).
  await field(page, 'Intake of the slash').fill('65.0875');
  await field(page, 'Angle of the slash').fill('17.5');
  await field(page, 'Angle of the slash').blur();
  await page.getByText('My work').click();
  await page.getByLabel('Lengths in').selectOption('inch');
  await expect(field(page, 'Intake of the slash')).toHaveValue('2 9/16');
  await expect(field(page, 'Angle of the slash')).toHaveValue('17.5');
  await page.keyboard.press('Escape');

  // At another step they are other fields; back there they are again, after a reload too.
  await page.getByLabel('After the step').selectOption('working-dart');
  await expect(field(page, 'Intake of the right waist dart')).toHaveValue('');
  await page.reload();
  await begin(page, `/lesson/${LESSON}/`);
  await openPaper(page, 'move');
  await expect(field(page, 'Intake of the slash')).toHaveValue('2 9/16');
  await compare(page);
  await expect(verdict(page)).toContainText('measured 2 9/16 in');
  await expect(verdict(page)).toContainText('tolerance 1/32 in');

  const download = page.waitForEvent('download');
  await page.getByText('My work').click();
  await page.getByRole('button', { name: 'Save my attempt' }).click();
  await (await download).saveAs(info.outputPath('saved.json'));
  expect(readFileSync(info.outputPath('saved.json'), 'utf8')).not.toMatch(/65\.08|paper|intake/);

  await page.getByRole('button', { name: 'Empty the fields' }).click();
  await page.reload();
  await begin(page, `/lesson/${LESSON}/`);
  await openPaper(page, 'move');
  await expect(page.getByRole('button', { name: 'Empty the fields' })).toBeDisabled();
  await expect(field(page, 'Intake of the slash')).toHaveValue('');
});

test('by keys alone, from the menu to the findings and back to the step', async ({ page }) => {
  await begin(page);
  const keys = new Keys(page);
  await keys.to('summary', 'My work');
  await keys.press('Enter');
  await keys.button('Worked on paper');
  await expect(page.getByRole('heading', { name: 'Worked on paper' })).toBeFocused();
  await keys.select('section[aria-label="Worked on paper"] select', 'move');
  await keys.type('[data-measure="front leg-length slash"]', half(leg));
  await keys.type('[data-measure="front intake slash"]', String(intake + 5));
  await keys.press('Enter');
  await expect(verdict(page)).toHaveAttribute('data-verdict', 'needsWork');
  await expect(page.locator('[data-code="paper/intake"].wrong')).toContainText('off by +5');
  await expect(page.locator('[aria-live]').first()).toContainText('1 of 2 findings are off.');
  await keys.button('Back to the step');
  await expect(page.getByRole('heading', { name: '1. Draw the working dart' })).toBeFocused();
});

test('a step with nothing to measure says so; one that was worked on the screen can be held against it', async ({
  page,
}) => {
  await begin(page, '/lesson/reading-the-block/');
  await openPaper(page, 'find');
  await expect(page.locator('[data-nothing]')).toContainText(
    'nothing that a ruler or a protractor could measure',
  );
  await expect(page.getByText('my own table on the screen')).toHaveCount(0);

  const [pass] = passesOf(LESSON, 2);
  await begin(page);
  const buffer = Buffer.from(toText(pass!.attempt));
  await page
    .getByLabel('Attempt file')
    .setInputFiles({ name: 'a.json', mimeType: 'application/json', buffer });
  await page.locator('nav button[data-step="move"][aria-current="step"]').waitFor();
  await openPaper(page);
  await page.getByLabel('my own table on the screen').check();
  // It was made with the pin: nothing was slashed.
  expect(pass!.attempt.commands.map(({ do: name }) => name)).toContain('pivot');
  await field(page, 'Angle of the new dart').fill(half(angle));
  await compare(page);
  await expect(verdict(page)).toHaveAttribute('data-verdict', 'accepted');
  await expect(page.getByText('Expected is what your own table on the screen has')).toBeVisible();
});

test('a drill has it too, a test has not', async ({ page }) => {
  await begin(page, '/practice/#slash.77.woven.usual.3');
  await openPaper(page, 'move');
  await field(page, 'Angle of the slash').fill('170');
  await compare(page);
  await expect(verdict(page)).toHaveAttribute('data-verdict', 'needsWork');

  await page.goto(`/lesson/${LESSON}/#test`);
  await page.reload();
  await page.getByRole('button', { name: 'Begin the test' }).click();
  await page.getByText('My work').click();
  await expect(page.getByRole('button', { name: 'Save the practice sheet' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Worked on paper' })).toHaveCount(0);
});

/* Outside source: axe-core's rules for WCAG 2.0, 2.1 and 2.2, levels A and AA (read: the tags of the installed version). */
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

for (const [name, viewport] of [
  ['desk', { width: 1440, height: 900 }],
  ['phone', { width: 390, height: 844 }],
] as const)
  for (const colorScheme of ['light', 'dark'] as const)
    test.describe(`${name}, ${colorScheme}`, () => {
      test.use({ viewport, colorScheme, hasTouch: name === 'phone' });

      test('fields, findings and what cannot be read pass axe, and nothing is wider than the panel', async ({
        page,
      }) => {
        await begin(page);
        await openPaper(page, 'move');
        await field(page, 'Leg of the slash').fill(half(leg));
        await field(page, 'Intake of the slash').fill('1');
        await page.getByText('On the paper from before').click();
        await compare(page);
        await expect(verdict(page)).toBeVisible();
        await field(page, 'Neckline').fill('x');
        await compare(page);
        await expect(page.getByText('Give millimetres')).toBeVisible();
        await expect(page.getByRole('region', { name: 'What cannot be read' })).toBeVisible();
        const { violations, passes } = await new AxeBuilder({ page }).withTags(TAGS).analyze();
        expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
        expect(passes.length).toBeGreaterThan(5);
        const panel = page.locator('.panel');
        expect(await panel.evaluate((one) => one.scrollWidth - one.clientWidth)).toBeLessThanOrEqual(0);
        // WCAG 2.2, 2.5.8: targets are at least 24 px (read).
        const small = await panel
          .locator('button, input, select, summary')
          .evaluateAll((all) =>
            all
              .map((one) => (one.closest('label') ?? one).getBoundingClientRect())
              .filter(({ width, height }) => width > 0 && Math.min(width, height) < 24),
          );
        expect(small).toEqual([]);
      });
    });
