import { expect, test, type Page } from '@playwright/test';
import { apply } from '../../src/lib/recipe/apply.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import { nameOf } from '../../src/lib/strings/names.ts';
import { sampleAttempt } from '../recipe/sample.ts';
import { check, commandsOf, enter, errorsOf, lesson, openAttempt } from './support/attempt.ts';
import { fileOf } from './support/drill.ts';
import { placeIn } from './support/keys.ts';
import { mmIn, told, type Told } from './support/twin.ts';
import { giveTyped, typedOf, unfold } from './support/typed.ts';

/*
 * Outside source: Chromium's own SVGPathElement.getTotalLength and getBBox on what is drawn, in mm of the piece (derived
 * from the picture, not from our arc length). The words are rounded to 0.1 mm, the drawn paths to 0.01 mm a coordinate.
 */
const HALF_A_TENTH = 0.05;
const DRAWN = 0.04;

test('every step is done by typed values alone, and the words tell what is drawn after each command', async ({
  page,
}) => {
  test.setTimeout(240_000);
  const errors = errorsOf(page);
  const sample = sampleAttempt(lesson.figure, 'knit');
  let work = startWork({ figure: lesson.figure });
  await enter(page);
  let compared = 0;
  for (const step of lesson.steps) {
    await expect(page.getByRole('heading', { level: 2 })).toContainText(step.title);
    await unfold(page, 'typed');
    await unfold(page, 'twin');
    for (const command of commandsOf(sample, step.id)) {
      await giveTyped(page, typedOf(command, work));
      const next = apply(work, command);
      if ('refused' in next) throw new Error(`${command.do}: ${next.refused.code}`);
      work = next.work;
      if (step.id !== 'read-the-block')
        compared += await expectSameNumbers(page, `${step.id}, ${command.do}`);
    }
    expect(await check(page), step.id).toBe('accepted');
    await page.getByRole('button', { name: /^(Next step|Finish)$/ }).click();
  }
  await expect(page.getByText('The lesson is finished')).toBeVisible();
  // So that a page that drew or told nothing cannot pass.
  expect(compared).toBeGreaterThan(1500);
  expect(errors).toEqual([]);
});

test('undo, redo and reset of the step are told at once', async ({ page }) => {
  const sample = sampleAttempt(lesson.figure, 'knit', { upTo: 'first-dart' });
  await enter(page);
  await openAttempt(page, sample);
  await unfold(page, 'twin');
  const words = () => page.locator('details[data-twin]').innerText();
  const button = (name: string) => page.getByRole('button', { name, exact: true });
  const turned = await words();
  await button('Undo').click();
  const slashed = await words();
  expect(slashed).not.toBe(turned);
  expect(await expectSameNumbers(page, 'undone')).toBeGreaterThan(20);
  await button('Undo').click();
  const whole = await words();
  expect(whole).not.toBe(slashed);
  await button('Redo').click();
  expect(await words()).toBe(slashed);
  await button('Redo').click();
  expect(await words()).toBe(turned);
  await button('Reset this step').click();
  expect(await words()).toBe(whole);
  await button('Undo').click();
  expect(await words()).toBe(turned);
});

test('in inches the words tell the same lengths', async ({ page }) => {
  await enter(page);
  await openAttempt(page, sampleAttempt(lesson.figure, 'knit', { upTo: 'second-dart' }));
  await unfold(page, 'twin');
  const lengths = async () =>
    (await told(page)).filter(({ kind }) => kind === 'Edges').map(({ value }) => value.split(',')[0] ?? '');
  const mm = (await lengths()).map(mmIn);
  await page.getByText('My work').click();
  await page.getByLabel('Lengths in').selectOption('inch');
  const inches = (await lengths()).map(inchesIn);
  expect(inches).toHaveLength(mm.length);
  // Inches are told to the nearest sixteenth.
  inches.forEach((inch, i) => expect(Math.abs(inch * 25.4 - mm[i]!)).toBeLessThan(25.4 / 32 + HALF_A_TENTH));
});

/** "9 in", "11/16 in" or "9 1/2 in" as a number. */
function inchesIn(text: string): number {
  const found = /^(?:(\d+)(?= |$))? ?(?:(\d+)\/(\d+))?$/.exec(text.replace(/ in$/, ''));
  if (!found || text === '') throw new Error(`No inches in: ${text}`);
  const [, whole, top, below] = found;
  return Number(whole ?? 0) + Number(top ?? 0) / Number(below ?? 1);
}

interface Shown {
  readonly piece: string;
  readonly key: string;
  readonly length: number;
  /** Middle of its box. */
  readonly x: number;
  readonly y: number;
}

/** Every line that is drawn, measured by the browser. */
const shown = (page: Page): Promise<readonly Shown[]> =>
  page.locator('.desk svg [data-piece] path[data-line]').evaluateAll((paths) =>
    (paths as SVGPathElement[]).map((path) => {
      const box = path.getBBox();
      return {
        piece: path.closest('[data-piece]')!.getAttribute('data-piece')!,
        key: path.getAttribute('data-line')!,
        length: path.getTotalLength(),
        x: box.x + box.width / 2,
        y: box.y + box.height / 2,
      };
    }),
  );

/** Compares the words with the drawing: edges by name and length, bust points by place. Gives how many numbers it compared. */
async function expectSameNumbers(page: Page, when: string): Promise<number> {
  const [words, lines] = [await told(page), await shown(page)];
  let compared = 0;
  for (const piece of new Set(lines.map((one) => one.piece))) {
    const mine = lines.filter((one) => one.piece === piece);
    // Once a treatment changed the outline, it is drawn as a whole; the sheets below it keep their old edges.
    const treated = mine.filter(({ key }) => key.startsWith('seam '));
    const ofPiece = words.filter((one) => one.piece === piece);
    // Legs that are taped to each other are drawn on their sheets still, but are no edges of the piece any more.
    const taped = ofPiece
      .filter(({ kind, value }) => kind === 'Darts' && value.startsWith('closed'))
      .flatMap(({ label }) => [`${label.split(' ')[0]}/dart-upper`, `${label.split(' ')[0]}/dart-lower`]);
    const edges = (treated.length > 0 ? treated : mine)
      .filter(
        ({ key }) =>
          !/^(in|notch|mark|ghost|eased|cut|grain)( |$)/.test(key) &&
          !key.endsWith('bust-point') &&
          !taped.includes(key),
      )
      .map(({ key, length }) => ({ name: nameOf(key.replace('seam ', '')), length }));
    const toldEdges = ofPiece
      .filter(({ kind }) => kind === 'Edges')
      .map(({ label, value }) => ({ name: label, length: mmIn(value) }));
    const sorted = (list: readonly { name: string; length: number }[]) =>
      [...list].sort((a, b) => a.name.localeCompare(b.name) || a.length - b.length);
    const [drawnNow, toldNow] = [sorted(edges), sorted(toldEdges)];
    expect(
      toldNow.map(({ name }) => name),
      `${when}: edges of ${piece}`,
    ).toEqual(drawnNow.map(({ name }) => name));
    toldNow.forEach(({ name, length }, i) => {
      expect(Math.abs(length - drawnNow[i]!.length), `${when}: ${piece}, ${name}`).toBeLessThan(
        HALF_A_TENTH + DRAWN,
      );
      compared += 1;
    });
    for (const cross of mine.filter(({ key }) => key.endsWith('bust-point'))) {
      const at = placeIn(pointOf(ofPiece, nameOf(cross.key)));
      expect(Math.hypot(at.x - cross.x, at.y - cross.y), `${when}: ${cross.key}`).toBeLessThan(
        2 * (HALF_A_TENTH + DRAWN),
      );
      compared += 1;
    }
  }
  return compared;
}

const pointOf = (words: readonly Told[], name: string): string =>
  words.find(({ kind, label }) => kind === 'Points' && label === name)?.value ?? '';

test('where and at which scale a place is measured stays chosen for the next one; how far along is asked anew', async ({
  page,
}) => {
  const fragment = 'slash.4711.woven.usual.3';
  await page.goto(`/practice/#${fragment}`);
  await page.getByRole('button', { name: 'Begin', exact: true }).click();
  const upTo = fileOf(fragment, (all) => all.filter(({ step }) => step !== 'move'));
  await page.getByLabel('Attempt file').setInputFiles(upTo);
  await expect(page.locator('nav button[data-step="slash-line"]')).toHaveAttribute('aria-current', 'step');
  await unfold(page, 'typed');
  const form = page.locator('[data-form="draw-slash"]');
  const [edge, along, scale] = ['On the', 'so far along it', 'measured'].map((name) => form.getByLabel(name));
  const second = (await edge!.locator('option').nth(2).getAttribute('value'))!;
  await edge!.selectOption(second);
  await along!.fill('20');
  await scale!.selectOption('half');
  await form.getByRole('button', { name: 'Draw the line' }).click();
  await expect(form.getByLabel('Name')).toHaveValue('slash-3');
  await expect(edge!).toHaveValue(second);
  await expect(scale!).toHaveValue('half');
  await expect(along!).toHaveValue('');
});
