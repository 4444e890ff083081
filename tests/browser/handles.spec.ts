import { expect, test } from '@playwright/test';
import { Desk, distance, touchHand } from './support/table.ts';

/** WCAG 2.2, 2.5.8 Target Size (Minimum), read at w3.org/TR/WCAG22: 24 by 24 CSS px. */
const LEAST = 24;

/** Tables with something to take hold of in every tool: an attempt, the step to look at, its tools. */
const TABLES: readonly (readonly [file: string, step: string, ...tools: string[]])[] = [
  ['10-leftover/attempts/start', 'leftover', 'Bridge and blend'],
  ['01-read-the-block/attempts/pass-on-the-landmarks', 'read-the-block', 'Point out', 'Read off'],
  ['02-open-out/attempts/start', 'open-out', ''],
  ['03-style-line/attempts/start', 'style-line', ''],
  ['03-style-line/attempts/pass-five-points', 'style-line', ''],
  ['04-notches/attempts/pass-five', 'notches', 'Notch', 'Take a notch away'],
  ['05-working-darts/attempts/unfinished-one-only', 'working-darts', ''],
  ['06-connectors/attempts/pass-to-the-nearest-points', 'connectors', ''],
  ['07-first-dart/attempts/start', 'first-dart', 'Scissors'],
  ['07-first-dart/attempts/unfinished-slashed-only', 'first-dart', 'Turn'],
  ['09-separate/attempts/start', 'separate', 'Cut apart'],
  ['09-separate/attempts/unfinished-one-overlaid', 'separate', 'Move a piece', 'Close and overlay'],
  ['10-leftover/attempts/unfinished-bridged-only', 'leftover', 'Ease in', 'Take out'],
  ['10-leftover/attempts/unfinished-not-renotched', 'leftover', 'True the back', 'Mark a notch again'],
  ['11-allowances/attempts/pass-knit-metric', 'allowances', 'Width', 'Corner', 'Carry notches out'],
  ['12-label-and-grain/attempts/pass-woven', 'label-and-grain', 'Grainline'],
  ['13-walk-the-seams/attempts/pass-woven', 'walk-the-seams', ''],
];

/** Goes through all tables with all their tools. */
async function everyTable(desk: Desk, look: (where: string) => Promise<void>): Promise<void> {
  test.slow();
  await desk.open();
  await desk.push('Start at once');
  for (const [file, step, ...tools] of TABLES) {
    await desk.openAttempt(`lessons/slanted-seam/${file}.attempt.json`);
    await desk.goTo(step, file.endsWith('start'));
    for (const tool of tools)
      await test.step(`${file} ${tool}`, async () => {
        if (tool !== '') await desk.take(tool);
        await expect(desk.page.locator('[data-target]').first()).toBeVisible();
        await look(`${step} ${tool}`);
      });
  }
  expect(desk.errors).toEqual([]);
}

/** At several zooms each handle is large enough; those that lie close together are drawn apart by looking nearer. */
async function largeEnough(desk: Desk, where: string): Promise<void> {
  // From all of the pieces, which a phone shows small, it is four times nearer.
  for (const zoom of ['Farther', 'Show all', 'Nearer', 'Nearer', 'Nearer', 'Nearer'] as const) {
    await desk.push(zoom);
    for (const { id, width, height } of await desk.hits()) {
      expect(width, `${where}: ${id}, ${zoom}`).toBeGreaterThanOrEqual(LEAST);
      expect(height, `${where}: ${id}, ${zoom}`).toBeGreaterThanOrEqual(LEAST);
    }
  }
  const hits = await desk.hits();
  hits.forEach((one, i) =>
    hits.slice(0, i).forEach((other) => {
      expect(distance(one, other), `${where}: ${one.id} and ${other.id}, near`).toBeGreaterThanOrEqual(LEAST);
    }),
  );
  await desk.push('Show all');
}

test('every handle is large enough to hit at any zoom, and a press on it takes that one', async ({
  page,
}) => {
  const desk = new Desk(page);
  let taken = 0;
  await everyTable(desk, async (where) => {
    await largeEnough(desk, where);
    const ids = await desk.handles();
    expect(new Set(ids).size, `${where}: no id twice`).toBe(ids.length);
    for (const id of ids) {
      await desk.hand.press(await desk.at(id));
      await expect(desk.handle(id), `${where}: ${id} is held`).toHaveAttribute('aria-pressed', 'true');
      await desk.hand.breakOff();
      await expect(page.locator('[data-state]')).toHaveAttribute('data-state', 'idle');
      taken += 1;
    }
  });
  expect(taken).toBeGreaterThan(150);
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('every handle is large enough to hit at any zoom', async ({ page }) => {
    const desk = new Desk(page, await touchHand(page));
    await everyTable(desk, (where) => largeEnough(desk, where));
  });

  test('a second finger lets go of what the first one holds, and both together look nearer', async ({
    page,
  }) => {
    const desk = new Desk(page, await touchHand(page));
    await desk.open();
    await desk.push('Start at once');
    await desk.openAttempt('lessons/slanted-seam/03-style-line/attempts/pass-five-points.attempt.json');
    await desk.onStep('Draw the style line');
    const line = await desk.drawn('in line');
    const before = await desk.scale();
    const from = await desk.at('point:1');
    const { x, y, width, height } = (await desk.svg.boundingBox())!;
    await desk.hand.zoom(from, { x: x + width / 2, y: y + height / 2 }, 2.5, { x, y, width, height });
    await expect.poll(() => desk.scale()).toBeCloseTo(2.5 * before, 1);
    expect((await desk.drawn('in line')).points).toEqual(line.points);
    await desk.hasDone(1);
    expect(desk.errors).toEqual([]);
  });
});
