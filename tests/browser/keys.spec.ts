import { expect, test } from '@playwright/test';
import { sampleAttempt } from '../recipe/sample.ts';
import { drawing, enter, errorsOf, LESSON_PATH, lesson, openAttempt } from './support/attempt.ts';
import { Keys, placeIn } from './support/keys.ts';
import { mmIn, told } from './support/twin.ts';

/*
 * The whole lesson by key presses: the lines and the moves with the handles of the table, the finishing from the table in
 * words and the typed forms. The page is looked at, as a person looks; only the keyboard acts.
 */
test('the whole lesson by keys alone, and every step is accepted', async ({ page }) => {
  test.setTimeout(240_000);
  const errors = errorsOf(page);
  const keys = new Keys(page);
  await page.goto(LESSON_PATH);
  await page.getByRole('button', { name: 'Start at once' }).waitFor();
  await keys.button('Start at once');

  const doneHere = page.getByText(/^What was done in this step/);
  const accepted = async (id: string): Promise<void> => {
    await keys.button('Check');
    const mark = page.locator('[data-verdict]');
    const text = await mark.locator('li:not(.right)').allInnerTexts();
    expect(await mark.getAttribute('data-verdict'), `${id}: ${text.join(' | ')}`).toBe('accepted');
    const last = id === lesson.steps.at(-1)!.id;
    await keys.button(last ? 'Finish' : 'Next step');
    if (last) return;
    // The button is gone; the keyboard is not lost with it.
    await expect(page.getByRole('heading', { level: 2 })).toBeFocused();
  };

  await readTheBlock(keys);
  await accepted('read-the-block');

  await keys.pick('centre-front');
  await accepted('open-out');

  await keys.unfold('The table in words');
  await styleLine(keys);
  await accepted('style-line');

  for (const [dart, by] of [
    ['right', -42],
    ['right', 34],
    ['left', -38],
    ['left', 46],
  ] as const) {
    await keys.pick(`new:${dart}`);
    await nudge(keys, by < 0 ? 'ArrowLeft' : 'ArrowRight', Math.abs(by));
    await keys.press('Enter');
  }
  await expect(doneHere).toContainText('(4)');
  await accepted('notches');

  for (const dart of ['right', 'left']) {
    await keys.pick(`tip:${dart}`);
    await keys.pick(`to:${dart}`);
  }
  await accepted('working-darts');

  for (const dart of ['right', 'left']) {
    await keys.pick(`tip:${dart}`);
    await keys.press('Enter');
  }
  await accepted('connectors');

  for (const [id, dart] of [
    ['first-dart', 'right'],
    ['second-dart', 'left'],
  ] as const) {
    await keys.pick(`cut:${dart}`);
    await keys.pick(`tip:${dart}`);
    await keys.take('Turn');
    await keys.handle(`turn:${dart}:freed`);
    await turnShut(keys);
    await accepted(id);
  }

  await keys.act('separate');
  await keys.take('Close and overlay');
  await keys.act('overlay:upper');
  await keys.act('overlay:lower');
  await accepted('separate');

  await leftover(keys);
  await accepted('leftover');
  await allowances(keys);
  await accepted('allowances');
  await labels(keys);
  await accepted('label-and-grain');
  await walkFromTheTwin(keys);
  await accepted('walk-the-seams');
  await expect(page.getByText('The lesson is finished')).toBeVisible();
  expect(errors).toEqual([]);
});

test('what is held by keys can be let go, put down, taken away and taken back', async ({ page }) => {
  const sample = sampleAttempt(lesson.figure, 'knit', { upTo: 'notches' });
  const keys = new Keys(page);
  await enter(page);
  await openAttempt(page, sample);
  const said = page.locator('[data-announcer]');
  const before = await drawing(page);

  // Space takes up as Enter does; what it measures is said when the keys rest; Escape changes nothing.
  await keys.handle('notch:n2');
  await keys.press('Space');
  await expect(said).toHaveText(/^notch n2 taken up\./);
  await keys.press('ArrowRight', 3);
  await expect(said).toHaveText(/^right bust point [\d.]+ mm/);
  expect(await drawing(page)).not.toBe(before);
  await keys.press('Escape');
  await expect(said).toHaveText(/^Let go; nothing changed\./);
  expect(await drawing(page)).toBe(before);

  // 20 + 2 + 0.2 mm further along the line, to the tenth that the handle tells.
  const along = async () => Number(/along the line ([\d.]+) mm/.exec(await keys.words('notch:n2'))![1]);
  const from = await along();
  for (const key of ['Enter', 'Shift+ArrowRight', 'ArrowRight', 'Alt+ArrowRight', 'Enter'])
    await keys.press(key);
  await expect(said).toHaveText(/^Done: Mark notch n2 across the line, at [\d.]+ % of its length\./);
  expect(Math.abs((await along()) - from - 22.2)).toBeLessThan(0.11);
  const moved = await drawing(page);

  await keys.handle('notch:n1');
  await keys.press('Delete');
  await expect(page.locator('[data-target="notch:n1"]')).toHaveCount(0);
  // The handle is gone; the table still has the keyboard.
  await expect(page.locator('.desk svg')).toBeFocused();
  await keys.button('Undo');
  expect(await drawing(page)).toBe(moved);
  await keys.button('Undo');
  expect(await drawing(page)).toBe(before);

  // Plus, minus and 0 look nearer, farther and at everything, and are no commands.
  const zoom = () => page.locator('.desk svg > g').first().getAttribute('transform');
  await keys.handle('notch:n3');
  await keys.press('0');
  const whole = await zoom();
  await keys.press('+');
  expect(await zoom()).not.toBe(whole);
  await keys.press('0');
  expect(await zoom()).toBe(whole);
  expect(await drawing(page)).toBe(before);
});

test('what is typed wrongly is told in words, and the table stays as it was', async ({ page }) => {
  const keys = new Keys(page);
  await enter(page);
  await openAttempt(page, sampleAttempt(lesson.figure, 'knit', { upTo: 'style-line' }));
  await keys.button('Check');
  await keys.button('Next step');
  const before = await drawing(page);
  await keys.unfold('By typed values');
  for (const [typed, told] of [
    ['', /a number is expected/],
    ['a pin', /a number is expected/],
    ['-5', /between the two ends of the line/],
    ['99999', /between the two ends of the line/],
  ] as const) {
    await keys.give({ form: 'notch', values: { at: typed } });
    await expect(page.locator('form[data-form="notch"] .problem')).toHaveText(told);
    await expect(page.locator('[data-announcer]')).toHaveText(told);
    // What was typed stays, to be mended.
    await expect(page.locator('[id="notch-at"]')).toHaveValue(typed);
    expect(await drawing(page)).toBe(before);
  }
  await keys.give({ form: 'notch', values: { at: '150,5 mm' } });
  await expect(page.locator('form[data-form="notch"] .problem')).toHaveCount(0);
  await expect(page.locator('[data-target="notch:n1"]')).toHaveAttribute(
    'aria-label',
    /along the line 150\.5 mm/,
  );
});

/** Arrow keys for a way in mm: with Shift 20, plain 2, with Alt 0.2 at full size. */
async function nudge(keys: Keys, arrow: string, mm: number): Promise<void> {
  let tenths = Math.round(mm * 5);
  for (const [key, worth] of [
    [`Shift+${arrow}`, 100],
    [arrow, 10],
    [`Alt+${arrow}`, 1],
  ] as const) {
    await keys.press(key, Math.floor(tenths / worth));
    tenths %= worth;
  }
}

async function readTheBlock(keys: Keys): Promise<void> {
  for (const id of [
    'landmark:right/bust-point',
    'edge:right/dart-upper',
    'edge:right/dart-lower',
    'edge:centre-front',
    'landmark:right/neck-point',
  ])
    await keys.pick(id);
  await keys.take('Read off');
  const lay = async (from: string, to: string): Promise<void> => {
    await keys.pick(`right/${from}`);
    await keys.pick(`right/${to}`);
  };
  await lay('bust-point', 'dart-upper-end');
  await lay('bust-point', 'dart-lower-end');
  const [leg, angle] = await rulersRead(keys);
  // Who cannot see the rulers hears them.
  await expect(keys.page.locator('[data-announcer]')).toContainText(`${leg}; ${leg}; ${angle}`);
  await lay('dart-upper-end', 'dart-lower-end');
  const intake = (await rulersRead(keys)).at(-1);
  await keys.unfold('By typed values');
  for (const [what, value] of [
    ['dart-angle', angle],
    ['leg-length', leg],
    ['intake', intake],
  ] as const)
    await keys.give({ form: `read-${what}`, values: { value: value ?? '' } });
}

/** What the rulers on the table show, the angle between them last. */
async function rulersRead(keys: Keys): Promise<string[]> {
  const written = await keys.page.locator('.desk svg .label.reading text').allTextContents();
  const lengths = written.filter((text) => text.endsWith('mm'));
  const angle = written.filter((text) => text.endsWith('°'));
  return [...lengths.slice(angle.length === 0 ? 1 : 0, angle.length === 0 ? 2 : 1), ...angle];
}

/** From edge to edge, then three points taken out of the line and put where the table in words says the bust points are. */
async function styleLine(keys: Keys): Promise<void> {
  await keys.pick('start:right/shoulder');
  await keys.pick('start:left/side-lower');
  const points = (await told(keys.page)).filter(({ piece, kind }) => piece === 'front' && kind === 'Points');
  const at = (name: string) => placeIn(points.find(({ label }) => label === name)?.value ?? '');
  const [b1, b2] = [at('right bust point'), at('left bust point')];
  for (const [i, goal] of [
    { x: b1.x + 17, y: b1.y - 7 },
    { x: (b1.x + b2.x) / 2 - 8, y: (b1.y + b2.y) / 2 + 8 },
    { x: b2.x - 4, y: b2.y + 17 },
  ].entries()) {
    const from = placeIn(await keys.words(`add:${i}`));
    await keys.pick(`add:${i}`);
    await nudge(keys, goal.x < from.x ? 'ArrowLeft' : 'ArrowRight', Math.abs(goal.x - from.x));
    await nudge(keys, goal.y < from.y ? 'ArrowUp' : 'ArrowDown', Math.abs(goal.y - from.y));
    await keys.press('Enter');
  }
}

/** Nudges the part that has the keyboard until the gap between the legs is closed, and puts it down. */
async function turnShut(keys: Keys): Promise<void> {
  const gap = async (): Promise<number> => {
    const written = await keys.page.locator('.desk svg .label.reading text').allTextContents();
    const found = written.map((text) => /gap.*?([\d.]+) mm/.exec(text)?.[1]).find((one) => one !== undefined);
    if (found === undefined) throw new Error(`No gap is shown: ${written.join(' | ')}`);
    return Number(found);
  };
  const before = await gap();
  await keys.press('ArrowRight');
  const way = (await gap()) < before ? 'ArrowRight' : 'ArrowLeft';
  for (let i = 0; i < 60 && (await gap()) > 0; i += 1) await keys.press(way);
  expect(await gap()).toBe(0);
  await keys.press('Enter');
}

/** Both ways of treating the leftover, typed, with the notches that the table in words tells. */
async function leftover(keys: Keys): Promise<void> {
  await keys.unfold('By typed values');
  await keys.unfold('The table in words');
  await keys.give({ form: 'copy', values: { as: 'woven' } });
  const sides = [
    { piece: 'lower', dart: 'right', end: 'start', edge: 'right/shoulder' },
    { piece: 'upper', dart: 'left', end: 'end', edge: 'left/side' },
  ] as const;
  for (const { piece, dart, end, edge } of sides) {
    // The opening lies where the connector met the line: the notches of the two intervals beside it hold it.
    const notches = (await told(keys.page))
      .filter((one) => one.piece === piece && one.kind === 'Notches')
      .map(({ label }) => label.replace('notch ', ''));
    const [from, to] = dart === 'right' ? notches.slice(0, 2) : notches.slice(-2);
    await keys.give({ form: `bridge-${piece}`, values: { before: '25', after: '25' } });
    await keys.give({ form: `ease-${piece}`, values: { from: from!, to: to! } });

    const copy = `${piece}@woven`;
    await keys.give({ form: `bridge-${copy}`, values: { before: '25', after: '25' } });
    await keys.give({ form: `take-out-${copy}`, values: { end, how: 'measured' } });
    await keys.give({ form: 'true', values: { edge } });
    const again = end === 'start' ? from! : to!;
    await keys.give({ form: `renotch-${copy}`, values: { notch: again, how: 'partner' } });
  }
}

/** Widths and corners on the table: the strip says what, Enter on a seam or a corner gives it. */
async function allowances(keys: Keys): Promise<void> {
  const handles = (kind: string) =>
    keys.page
      .locator(`[data-target^="${kind}:"]`)
      .evaluateAll((all) => all.map((one) => one.getAttribute('data-target') ?? ''));
  for (const [mm, mine] of [
    ['10', (id: string) => !id.endsWith(':neckline')],
    ['6', (id: string) => id.endsWith(':neckline')],
  ] as const) {
    await keys.type('.strip [data-option="width"]', mm);
    await keys.press('Enter');
    for (const id of await handles('group')) if (mine(id)) await keys.pick(id);
  }
  await keys.take('Corner');
  const rank = (group: string) => {
    const found = ['style-line', 'shoulder', 'side'].findIndex((name) => group.endsWith(name));
    return found < 0 ? 9 : found;
  };
  const corners = (await handles('corner')).map((id) => {
    const [before = '', after = ''] = id.slice(id.lastIndexOf(':') + 1).split('>');
    const sewn = Math.min(rank(before), rank(after)) < 9;
    return { id, form: sewn ? 'reflect' : 'mitre', first: rank(after) < rank(before) ? 'after' : 'before' };
  });
  for (const form of ['reflect', 'mitre'])
    for (const first of ['before', 'after']) {
      const mine = corners.filter((one) => one.form === form && one.first === first);
      if (mine.length === 0) continue;
      await keys.select('.strip [data-option="form"]', form);
      await keys.select('.strip [data-option="first"]', first);
      for (const { id } of mine) await keys.pick(id);
    }
  await keys.take('Carry notches out');
  for (const id of await handles('piece')) await keys.pick(id);
}

async function labels(keys: Keys): Promise<void> {
  await keys.unfold('By typed values');
  const forms = await keys.page
    .locator('form[data-form^="label-"]')
    .evaluateAll((all) => all.map((one) => one.getAttribute('data-form') ?? ''));
  for (const form of forms) {
    const piece = form.slice('label-'.length);
    // The back as drafted is the same for both halves; every other piece is cut once.
    const pair = piece === 'back';
    await keys.give({ form, values: { name: piece, cut: pair ? '2' : '1', rightSideUp: !pair } });
  }
  await keys.take('Grainline');
  const handles = await keys.page
    .locator('[data-target^="grain:"]')
    .evaluateAll((all) => all.map((one) => one.getAttribute('data-target') ?? ''));
  expect(handles).toHaveLength(forms.length);
  for (const id of handles) {
    await keys.pick(id);
    await keys.press('Enter');
  }
}

/** Says of each seam what the lengths in words say: the two sides match, or they match but for what was eased. */
async function walkFromTheTwin(keys: Keys): Promise<void> {
  await keys.unfold('By typed values');
  await keys.unfold('The table in words');
  const words = await told(keys.page);
  const knit = words.filter(({ piece }) => !piece.includes('@'));
  const long = (piece: RegExp, edge: RegExp): number =>
    knit
      .filter((one) => one.kind === 'Edges' && piece.test(one.piece) && edge.test(one.label))
      .reduce((sum, one) => sum + mmIn(one.value), 0);
  const eased = knit.filter(({ kind, label }) => kind === 'Leftover' && label.endsWith('eased'));
  expect(eased.map(({ piece }) => piece)).toEqual(['upper', 'lower']);
  await keys.give({ form: 'walk', values: { seam: 'style-line', along: 'seam', says: 'eased' } });
  for (const side of ['right', 'left'])
    for (const seam of ['shoulder', 'side']) {
      const front = long(/^(upper|lower)$/, new RegExp(`^${side} ${seam} seam`));
      const back = long(/^back$/, new RegExp(`^back ${seam} seam`));
      // The step's text: seams match to 1.6 mm; the back shoulder is 3 to 10 mm longer, which is the block's own ease.
      const over = back - front;
      if (seam === 'shoulder') expect(over).toBeGreaterThan(3);
      expect(over).toBeLessThan(seam === 'shoulder' ? 10 : 1.6);
      expect(over).toBeGreaterThan(-1.6);
      await keys.give({ form: 'walk', values: { seam: `${side}/${seam}`, along: 'seam', says: 'match' } });
    }
}
