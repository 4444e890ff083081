import { readFile } from 'node:fs/promises';
import { expect, test, type Page } from '@playwright/test';
import '../../src/lib/recipe/commands/index.ts';
import { chainLength } from '../../src/lib/geometry/chain.ts';
import { invariantsOf } from '../../src/lib/grading/bench/invariants.ts';
import { replayDocument } from '../../src/lib/recipe/document.ts';
import { parseRecipe } from '../../src/lib/recipe/parse.ts';
import { apply } from '../../src/lib/recipe/apply.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import { replay } from '../../src/lib/recipe/replay.ts';
import type { Command, Recipe } from '../../src/lib/recipe/types.ts';
import { toolName } from '../../src/lib/strings/tools.ts';
import { errorsOf } from './support/attempt.ts';
import { expectNoViolation } from './support/axe.ts';
import { Keys } from './support/keys.ts';
import { typedOf } from './support/typed.ts';
import { Desk, touchHand, type Goal } from './support/table.ts';

const B = { landmark: 'right/bust-point' };
const moved = (dart: string, edge: string): readonly Command[] => [
  { do: 'extend-dart', dart, to: B },
  { do: 'draw-slash', slash: 'slash', from: { on: edge, at: 0.5 }, to: B },
  { do: 'cut-slash', slash: 'slash', past: 0 },
  { do: 'turn', dart, into: 'slash', part: 'freed', about: B, by: { until: 'legs-meet' } },
];
const recipe = (form: 'side' | 'waist', commands: readonly Command[]): Recipe => ({
  format: 'pin-and-pivot/recipe',
  version: 1,
  block: { figure: 'F2', form },
  fabric: 'woven',
  seed: 0,
  commands,
});
const RECIPE = recipe('side', moved('right', 'right/shoulder'));
const WAIST = recipe('waist', moved('right/waist-dart', 'right/side'));

const row = (page: Page, id: string) => page.locator(`[data-row="${id}"]`);
const part = (page: Page, id: string) => page.locator(`[data-group="${id}"]`);
const done = (page: Page, count: number) =>
  expect(page.locator('summary', { hasText: 'What was done' })).toHaveText(`What was done (${count})`);

async function lay(page: Page): Promise<void> {
  await page.goto('/bench/');
  await page.getByRole('button', { name: 'Lay it on the bench' }).click();
  await page.locator('[data-invariants="angle"]').waitFor();
}

async function saved(page: Page): Promise<{ name: string; text: string; recipe: Recipe }> {
  await page.getByText('This work', { exact: true }).click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save to a file' }).click(),
  ]);
  const text = await readFile(await download.path(), 'utf8');
  const parsed = parseRecipe(text);
  if ('problems' in parsed) throw new Error(JSON.stringify(parsed.problems));
  return { name: download.suggestedFilename(), text, recipe: parsed.ok };
}
const file = (text: string, name = 'Sent.recipe.json') => ({
  name,
  mimeType: 'application/json',
  buffer: Buffer.from(text),
});

const OWN = 'turn:right:freed';
const OTHER = 'turn:right:rest';
const bust =
  (desk: Desk): Goal =>
  async () =>
    desk.place(await desk.mark('right/bust-point'));
/** Well beside the handle in the middle of the edge, which a finger would take up instead. */
const shoulder =
  (desk: Desk): Goal =>
  async () => {
    const line = await desk.drawn('right/shoulder');
    return desk.place(line.pointAt(0.82 * line.length));
  };

/** The side dart goes to the shoulder by slash and turn, by hand. */
async function toTheShoulder(desk: Desk): Promise<void> {
  const { page } = desk;
  await desk.hand.push(part(page, 'darts'));
  await desk.take('Dart legs');
  await desk.drag('tip:right', 'to:right');
  await done(page, 1);
  await expect(row(page, 'right/bust-point:right')).toContainText('open');
  await desk.take('Slash line');
  await desk.drag(shoulder(desk), bust(desk));
  await done(page, 2);
  await desk.hand.push(part(page, 'cut'));
  await desk.take('Scissors to the bust point');
  await desk.drag('cut:slash', 'tip:slash');
  await done(page, 3);
  await desk.take('Turn');
}

/** What stands on the page is what the file's own replay measures. */
async function readsRight(page: Page, recipe: Recipe): Promise<void> {
  const { work } = replay(recipe);
  const { bustPoints, area, seams } = invariantsOf(work, recipe.fabric);
  const degrees = (radians: number) => `${Number(((radians * 180) / Math.PI).toFixed(1))}°`;
  for (const { id, paper, darts } of bustPoints) {
    await expect(row(page, id)).toContainText(`${degrees(paper)} of paper`);
    await expect(row(page, id)).toHaveAttribute('data-state', 'kept');
    for (const dart of darts)
      await expect(row(page, `${id}:${dart.id}`)).toContainText(
        Math.abs(dart.open) < 1e-9 ? 'closed' : `${degrees(dart.open)} open`,
      );
  }
  await expect(row(page, 'sheets')).toContainText(`${Number((area.sheets / 100).toFixed(2))} cm²`);
  await expect(row(page, 'sheets')).toHaveAttribute('data-state', 'kept');
  for (const { kind, id, a } of seams)
    await expect(row(page, `${kind}:${id}:lengths`)).toContainText(String(Number(a.toFixed(1))));
  // Source: arithmetic, a dart that was closed opened as much elsewhere.
  const angle = bustPoints[0]!.darts.find(({ id }) => id === 'slash')!.open;
  expect(angle).toBeCloseTo(work.block.facts.dartAngle, 9);
}

test('by hand: a dart is turned, what holds is read beside it; named, kept, opened again, saved and opened from the file', async ({
  page,
}) => {
  const desk = new Desk(page);
  await lay(page);
  await expect(row(page, 'right/bust-point')).toContainText('0° open, 360° of paper');
  await expect(page.getByText('Check', { exact: true })).toHaveCount(0);
  await toTheShoulder(desk);
  await desk.dragTo(OWN, async () => {
    const [a, b] = [await desk.at(OWN), await desk.at(OTHER)];
    return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  });
  // Live, before it is let go.
  await expect(row(page, 'right/bust-point:slash')).toContainText(/[1-9][\d.]*° open/);
  await done(page, 3);
  await desk.hand.move(await desk.at(OTHER));
  await desk.hand.lift();
  await done(page, 4);
  await desk.picture('bench-turned');
  const first = await saved(page);
  await readsRight(page, first.recipe);
  expect(first.recipe.commands.map((one) => one.do)).toEqual([
    'extend-dart',
    'draw-slash',
    'cut-slash',
    'turn',
  ]);
  expect(first.recipe.commands.every(({ step }) => step === undefined)).toBe(true);

  await page.getByLabel('Name of this work').fill('Shoulder dart');
  await page.getByRole('button', { name: 'Keep the name' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Shoulder dart');
  await page.reload();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Shoulder dart');
  await done(page, 4);
  await page.getByRole('button', { name: 'All works' }).click();
  await page.reload();
  await page.getByRole('button', { name: 'Open Shoulder dart' }).click();
  await done(page, 4);
  const again = await saved(page);
  expect(again.name).toBe('shoulder-dart.recipe.json');
  expect(again.text).toBe(first.text);

  // From the file on another table, with the same bits.
  await page.getByRole('button', { name: 'Back to the block' }).click();
  await done(page, 0);
  await page.getByRole('button', { name: 'Undo' }).click();
  await done(page, 4);
  await page.getByLabel('Recipe file').setInputFiles(file(again.text));
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Sent');
  const sent = await saved(page);
  expect(JSON.stringify(replayDocument(sent.recipe))).toBe(JSON.stringify(replayDocument(first.recipe)));
  await readsRight(page, sent.recipe);
  expect(desk.errors).toEqual([]);
});

test('the shelf: renamed, deleted, taken out of the bin again, and gone for good only when the bin is emptied', async ({
  page,
}) => {
  const errors = errorsOf(page);
  await page.goto('/bench/');
  await page.getByLabel('Whole front, opened out').check();
  await page.getByRole('button', { name: 'Lay it on the bench' }).click();
  await done(page, 1);
  await expect(row(page, 'left/bust-point')).toBeVisible();
  await page.getByRole('button', { name: 'All works' }).click();
  await page.getByRole('button', { name: 'Rename Unnamed work' }).click();
  await page.getByLabel('Name', { exact: true }).fill('  Whole   front ');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Delete Whole front' }).click();
  await expect(page.locator('[data-work]')).toHaveCount(0);
  await page.reload();
  await page.getByText('In the bin (1)').click();
  await page.getByRole('button', { name: 'Take out Whole front' }).click();
  await page.getByRole('button', { name: 'Delete Whole front' }).click();
  await page.getByRole('button', { name: 'Take it out again' }).click();
  await page.getByRole('button', { name: 'Open Whole front' }).click();
  await done(page, 1);
  await page.getByRole('button', { name: 'All works' }).click();
  await page.getByRole('button', { name: 'Delete Whole front' }).click();
  await page.getByText('In the bin (1)').click();
  await page.getByRole('button', { name: 'Empty the bin for good' }).click();
  await expect(page.getByText('Nothing is kept yet')).toBeVisible();
  await page.reload();
  await expect(page.getByText('Nothing is kept yet')).toBeVisible();
  expect(errors).toEqual([]);
});

test('a file that cannot be read changes nothing, and it is said where, what was expected and what was found', async ({
  page,
}) => {
  const errors = errorsOf(page);
  await lay(page);
  await page.getByLabel('Recipe file').setInputFiles(file(JSON.stringify(RECIPE), 'Mine.recipe.json'));
  await done(page, RECIPE.commands.length);
  const bad = JSON.stringify(RECIPE).replace('"extend-dart"', '"fly"');
  await page.getByLabel('Recipe file').setInputFiles(file(bad));
  const alert = page.getByRole('alert');
  await expect(alert).toContainText('The file was not opened; the table is as it was.');
  await expect(alert).toContainText(/commands\[0\].*expected .+, found "fly"/);
  await done(page, RECIPE.commands.length);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Mine');
  expect(errors).toEqual([]);
});

test('storage that is forbidden is told once, and the works last as long as the page', async ({ page }) => {
  const errors = errorsOf(page);
  await page.addInitScript(() => {
    indexedDB.open = () => {
      throw new DOMException('not allowed here', 'SecurityError');
    };
  });
  await lay(page);
  await page.getByLabel('Recipe file').setInputFiles(file(JSON.stringify(RECIPE), 'Mine.recipe.json'));
  await done(page, RECIPE.commands.length);
  await expect(page.getByRole('alert')).toHaveCount(1);
  await expect(page.getByRole('alert')).toContainText('does not let the app keep anything');
  await expect(page.getByRole('button', { name: 'Save this work to a file' })).toBeVisible();
  await page.getByRole('button', { name: 'All right' }).click();
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByRole('button', { name: 'All works' }).click();
  await page.getByRole('button', { name: 'Open Mine' }).click();
  await done(page, RECIPE.commands.length - 1);
  await expect(page.getByRole('alert')).toHaveCount(0);
  expect(errors).toEqual([]);
});

test('a work that cannot be read is told once and left, and the database of the version before is brought up to date', async ({
  page,
}) => {
  const errors = errorsOf(page);
  await page.goto('/icon.svg');
  // The second version as it was: lessons and events, and no works.
  await change(page, 2, 'progress', 'lesson', 'a note of old');
  await lay(page);
  await page.getByLabel('Recipe file').setInputFiles(file(JSON.stringify(RECIPE), 'Mine.recipe.json'));
  await done(page, RECIPE.commands.length);
  await page.goto('/icon.svg');
  expect(await look(page, 'progress', 'lesson')).toBe('a note of old');
  await change(page, undefined, 'works', 'broken', 'pins and needles');
  await page.goto('/bench/');
  await expect(page.getByRole('alert')).toHaveCount(1);
  await expect(page.getByRole('alert')).toContainText('A work that is kept on this device cannot be read.');
  await expect(page.getByRole('button', { name: 'Open Mine' })).toBeVisible();
  await page.goto('/icon.svg');
  expect(await look(page, 'works', 'broken')).toBe('pins and needles');
  expect(errors).toEqual([]);
});

/** Puts a text into the database, which is made in that version when there is none. */
const change = (page: Page, version: number | undefined, store: string, key: string, text: string) =>
  page.evaluate(
    ([number, into, at, value]) =>
      new Promise<void>((resolve, reject) => {
        const request = indexedDB.open('pin-and-pivot', number);
        request.onupgradeneeded = () => {
          request.result.createObjectStore('progress');
          request.result.createObjectStore('events');
        };
        request.onerror = () => reject(request.error);
        request.onsuccess = () => {
          const transaction = request.result.transaction(into, 'readwrite');
          transaction.objectStore(into).put(value, at);
          transaction.oncomplete = () => (request.result.close(), resolve());
        };
      }),
    [version, store, key, text] as const,
  );

/** An id that was drawn (RFC 9562). */
const UUID = /[\da-f]{8}(?:-[\da-f]{4}){3}-[\da-f]{12}/g;

const look = (page: Page, store: string, key: string): Promise<unknown> =>
  page.evaluate(
    ([from, at]) =>
      new Promise((resolve, reject) => {
        const request = indexedDB.open('pin-and-pivot');
        request.onerror = () => reject(request.error);
        request.onsuccess = () => {
          const get = request.result.transaction(from).objectStore(from).get(at);
          get.onsuccess = () => (request.result.close(), resolve(get.result));
        };
      }),
    [store, key] as const,
  );

test('by keys alone: a block is chosen, a dart moved to the waist, named, left and opened again', async ({
  page,
}) => {
  const errors = errorsOf(page);
  const keys = new Keys(page);
  await page.goto('/bench/');
  await page.getByRole('button', { name: 'Lay it on the bench' }).waitFor();
  await keys.to('input[name="paper"]:checked');
  await keys.press('ArrowDown', 2);
  await keys.button('Lay it on the bench');
  let work = startWork(WAIST.block);
  await page.locator('[data-invariants="angle"]').waitFor();
  for (const [i, command] of WAIST.commands.entries()) {
    await keys.to(`[data-group="${['cut-slash', 'turn'].includes(command.do) ? 'cut' : 'darts'}"]`);
    await keys.press('Enter');
    await keys.take(toolName(command.do));
    await keys.unfold('By typed values');
    await keys.give(typedOf(command, work));
    await done(page, i + 1);
    const next = apply(work, command);
    if ('refused' in next) throw new Error(JSON.stringify(next.refused));
    work = next.work;
  }
  await expect(row(page, 'right/bust-point:right/waist-dart')).toContainText('closed');
  await expect(row(page, 'right/bust-point')).toHaveAttribute('data-state', 'kept');
  await keys.type('#work-name', 'By keys');
  await keys.press('Enter');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('By keys');
  await keys.button('All works');
  await keys.to('[data-work] .primary');
  await keys.press('Enter');
  await done(page, WAIST.commands.length);
  await keys.to('summary', 'This work');
  await keys.press('Enter');
  const [download] = await Promise.all([page.waitForEvent('download'), keys.button('Save to a file')]);
  expect(download.suggestedFilename()).toBe('by-keys.recipe.json');
  const parsed = parseRecipe(await readFile(await download.path(), 'utf8'));
  if ('problems' in parsed) throw new Error(JSON.stringify(parsed.problems));
  expect(JSON.stringify(replay(parsed.ok).work.pieces)).toBe(JSON.stringify(work.pieces));
  expect(errors).toEqual([]);
});

test('own measures: typed by keys, told what is wrong and nothing lost; kept with the work, laid on a figure and back', async ({
  page,
}) => {
  test.setTimeout(240_000);
  const errors = errorsOf(page);
  const keys = new Keys(page);
  const measure = (key: string) => page.locator(`[data-measure="${key}"]`);
  await page.goto('/bench/');
  await page.getByRole('button', { name: 'Lay it on the bench' }).waitFor();
  await keys.select('form select', 'own');
  // Outside source: the draft's own limits, bust 700 to 1300; nape to waist leaves 110 mm of side seam below the bust line at
  // bust / 12 + 137 (trade notes): 347 mm at bust 1200.
  for (const [key, text] of [
    ['bust', '1200'],
    ['waist', 'a metre'],
    ['napeToWaist', '34 cm'],
  ] as const)
    await keys.type(`[data-measure="${key}"]`, text);
  await keys.press('Enter');
  await expect(measure('waist')).toBeFocused();
  await expect(page.locator('[data-own] .problem')).toHaveText([
    'Waist: the draft works with 480 mm to 1260 mm beside this bust; here is “a metre”.',
    'Nape to waist: the draft works with 347 mm to 480 mm beside this bust; here is “34 cm”.',
  ]);
  await expect(measure('waist')).toHaveAttribute('aria-invalid', 'true');
  await expect(measure('bust')).toHaveValue('1200');
  await expect(measure('napeToWaist')).toHaveValue('34 cm');
  await keys.type('[data-measure="waist"]', '100,5 cm');
  await keys.type('[data-measure="napeToWaist"]', '15 1/2 in');
  await keys.button('Lay it on the bench');
  await page.locator('[data-invariants="angle"]').waitFor();

  // Kept before anything is done on it, and nowhere but in the work.
  const id = new URL(page.url()).hash.slice(1);
  // The address is checked as a whole: the digits of a measure may also stand in a port or in an id that was drawn.
  const address = new URL(page.url());
  expect(`${address.pathname}${address.search}`).toBe('/bench/');
  expect(address.hash).toMatch(new RegExp(`^#${UUID.source}$`));
  const block = { measures: { bust: 1200, waist: 1005, napeToWaist: 15.5 * 25.4 }, form: 'side' };
  const kept = async () => (JSON.parse(String(await look(page, 'works', id))) as { recipe: Recipe }).recipe;
  expect((await kept()).block).toEqual(block);
  const elsewhere = await page.evaluate(() => JSON.stringify({ ...localStorage, ...sessionStorage }));
  expect(elsewhere.replace(UUID, '')).not.toMatch(/1200|1005|393/);
  const others = await page.evaluate(
    () =>
      new Promise<number>((resolve) => {
        const request = indexedDB.open('pin-and-pivot');
        request.onsuccess = () => {
          const stores = [...request.result.objectStoreNames].filter((name) => name !== 'works');
          const counts = stores.map((name) => request.result.transaction(name).objectStore(name).count());
          counts.at(-1)!.onsuccess = () => {
            resolve(counts.reduce((sum, one) => sum + one.result, 0));
            request.result.close();
          };
        };
      }),
  );
  expect(others).toBe(0);

  // What lies there is the draft of these measures.
  const { front } = startWork(block as Recipe['block']).block;
  const waist = front.parts[0]!.edges.find(({ id: edge }) => edge === 'right/waist')!;
  await keys.unfold('The table in words');
  const mm = Number(chainLength(waist.chain).toFixed(1));
  await expect(page.locator('[data-twin]')).toContainText(`${mm} mm`);

  // On a figure and back, by the same measures to the last bit; then by others, in inches.
  await keys.select('.work select', 'F4');
  await expect.poll(async () => (await kept()).block).toEqual({ figure: 'F4', form: 'side' });
  // Also after a reload.
  await page.reload();
  await page.locator('[data-invariants="angle"]').waitFor();
  await keys.select('.work select', 'own');
  await expect(measure('napeToWaist')).toHaveValue('393.7');
  await keys.button('Lay it on these measures');
  await expect.poll(async () => (await kept()).block).toEqual(block);
  // What was wrong is not said any more when the measures are unfolded again.
  await keys.type('[data-measure="waist"]', 'a metre');
  await keys.button('Lay it on these measures');
  await expect(page.locator('[data-own] .problem')).toHaveCount(1);
  await page.getByText('The measures', { exact: true }).click();
  await page.getByText('The measures', { exact: true }).click();
  await expect(page.locator('[data-own] .problem')).toHaveCount(0);
  await page.getByText('This work', { exact: true }).click();
  await keys.type('[data-measure="waist"]', '980');
  await page.getByLabel('Lengths in').selectOption('inch');
  await expect(measure('waist')).toHaveValue('980 mm');
  await keys.type('[data-measure="waist"]', '39 1/2');
  await keys.button('Lay it on these measures');
  await expect
    .poll(async () => (await kept()).block)
    .toEqual({ measures: { ...block.measures, waist: 39.5 * 25.4 }, form: 'side' });

  // They go with the work.
  await keys.button('All works');
  await expect(page.locator('[data-work]')).toContainText(
    'own measures, half front, side dart, nothing done yet',
  );
  await page.getByRole('button', { name: 'Delete Unnamed work' }).click();
  await page.getByText('In the bin (1)').click();
  await page.getByRole('button', { name: 'Empty the bin for good' }).click();
  await expect.poll(() => look(page, 'works', id)).toBeUndefined();
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
      test('axe finds nothing on the shelf and on the table', async ({ page }) => {
        test.setTimeout(240_000);
        await page.goto('/bench/');
        await page.getByRole('button', { name: 'Lay it on the bench' }).waitFor();
        await page.getByLabel('Body').selectOption('own');
        await page.getByRole('button', { name: 'Lay it on the bench' }).click();
        await expect(page.locator('[data-own] .problem')).toHaveCount(3);
        await expectNoViolation(page, 'shelf, own measures');
        await page.getByLabel('Body').selectOption('F2');
        await expectNoViolation(page, 'shelf');
        await page.getByLabel('Recipe file').setInputFiles(file(JSON.stringify(RECIPE), 'Mine.recipe.json'));
        await done(page, RECIPE.commands.length);
        for (const id of ['read', 'darts', 'cut', 'finish']) {
          await part(page, id).click();
          if (id === 'finish') await page.getByText(/^Not yet/).click();
          await expectNoViolation(page, id);
        }
        // What waits takes no more than its share of a small screen.
        await expect(page.locator('.waiting')).toContainText('needs a bridged opening.');
        expect((await page.locator('.board').boundingBox())!.height).toBeGreaterThan(viewport.height / 3);
        await page.getByText(/^Not yet/).click();
        for (const summary of ['By typed values', 'The table in words', 'What was done', 'This work'])
          await page.locator('summary', { hasText: summary }).click();
        await expectNoViolation(page, 'unfolded');
        await page.keyboard.press('Escape');
        expect(
          await page.evaluate(() => document.documentElement.scrollWidth - innerWidth),
        ).toBeLessThanOrEqual(0);
        await page.getByRole('button', { name: 'All works' }).click();
        await page.getByRole('button', { name: 'Delete Mine' }).click();
        await page.getByText('In the bin (1)').click();
        await expectNoViolation(page, 'bin');
      });
    });

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 });
  test('by touch: a dart is turned to the shoulder', async ({ page }) => {
    const desk = new Desk(page, await touchHand(page));
    await page.goto('/bench/');
    await desk.push('Lay it on the bench');
    await page.locator('[data-invariants="angle"]').waitFor();
    await toTheShoulder(desk);
    await desk.drag(OWN, OTHER);
    await done(page, 4);
    await readsRight(page, (await saved(page)).recipe);
    expect(desk.errors).toEqual([]);
  });
});

test('a sewn point that is moved takes its cap along, and that is said', async ({ page }) => {
  const capped: readonly Command[] = [
    { do: 'back-off', dart: 'right/waist-dart', by: 16 },
    { do: 'cap', dart: 'right/waist-dart', fold: 'centre' },
  ];
  await page.goto('/bench/');
  await page.getByLabel('Recipe file').setInputFiles(file(JSON.stringify(recipe('waist', capped))));
  await done(page, 2);
  await part(page, 'darts').click();
  await page.getByRole('radio', { name: toolName('back-off') }).check();
  await page.getByText('By typed values').click();
  const form = page.locator('[data-form="back-off-right/waist-dart"]');
  await form.getByRole('button').click();
  await done(page, 3);
  const said = page.getByText('The cap of the right waist dart belonged to the legs as they were');
  await expect(said.filter({ visible: true }).first()).toBeVisible();
  await expect(page.locator('[data-announcer]')).toContainText('cap of the right waist dart');
  // It is said of this table only.
  await page.getByRole('button', { name: 'Undo' }).click();
  await done(page, 2);
  await expect(page.locator('p.message')).toHaveCount(0);
  await expect(page.locator('[data-announcer]')).not.toContainText('cap of the right waist dart');
});
