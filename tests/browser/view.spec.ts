import { expect, test, type Locator, type Page } from '@playwright/test';
import { canZoom } from './support/hand.ts';
import { Desk } from './support/table.ts';

/** How the table is seen: the drawing's own transform. */
interface Seen {
  readonly k: number;
  readonly x: number;
  readonly y: number;
}
const drawing = (page: Page): Locator => page.locator('.desk svg');

async function seen(page: Page): Promise<Seen> {
  const text = (await drawing(page).locator('> g').first().getAttribute('transform')) ?? '';
  const [x, y, k] = (text.match(/-?[\d.]+(e-?\d+)?/g) ?? []).map(Number);
  return { x: x!, y: y!, k: k! };
}
/** The place of the table under a point of the window, mm. */
async function under(page: Page, at: { x: number; y: number }): Promise<{ x: number; y: number }> {
  const { x, y, k } = await seen(page);
  const box = (await drawing(page).boundingBox())!;
  return { x: (at.x - box.x - x) / k, y: (at.y - box.y - y) / k };
}
const same = (one: { x: number; y: number }, other: { x: number; y: number }): void => {
  expect(one.x).toBeCloseTo(other.x, 6);
  expect(one.y).toBeCloseTo(other.y, 6);
};

/** A place where nothing can be taken hold of: a corner of the desk. */
async function empty(page: Page): Promise<{ x: number; y: number }> {
  const box = (await drawing(page).boundingBox())!;
  return { x: Math.round(box.x) + 24, y: Math.round(box.y) + 24 };
}

test.beforeEach(async ({ page }) => {
  const desk = new Desk(page);
  await desk.open('waist-to-side');
  await desk.push('Start at once');
  await page.locator('[data-target]').first().waitFor();
  await canZoom(page);
});

test('a mouse pulls the table along, outside the drawing too, and no further once it lets go', async ({
  page,
}) => {
  const before = await seen(page);
  const at = await empty(page);
  await page.mouse.move(at.x, at.y);
  await page.mouse.down();
  await page.mouse.move(at.x + 60, at.y + 35, { steps: 3 });
  const now = await seen(page);
  expect(now.k).toBe(before.k);
  same(now, { x: before.x + 60, y: before.y + 35 });
  await page.mouse.move(2, 2);
  const left = await seen(page);
  same(left, { x: before.x + 2 - at.x, y: before.y + 2 - at.y });
  await page.mouse.up();
  expect(await seen(page)).toEqual(left);
  await page.mouse.move(at.x + 200, at.y + 90);
  expect(await seen(page)).toEqual(left);
});

test('the right button pulls nothing', async ({ page }) => {
  const before = await seen(page);
  const at = await empty(page);
  await page.mouse.move(at.x, at.y);
  await page.mouse.down({ button: 'right' });
  await page.mouse.move(at.x + 60, at.y + 35);
  await page.mouse.up({ button: 'right' });
  expect(await seen(page)).toEqual(before);
});

test('the wheel enlarges and makes smaller about the place under the pointer, within limits', async ({
  page,
}) => {
  const before = await seen(page);
  const at = await empty(page);
  await page.mouse.move(at.x + 80, at.y + 50);
  const place = await under(page, { x: at.x + 80, y: at.y + 50 });
  await page.mouse.wheel(0, -500);
  await expect.poll(async () => (await seen(page)).k).toBeCloseTo(before.k * 2, 6);
  same(await under(page, { x: at.x + 80, y: at.y + 50 }), place);
  for (let i = 0; i < 4; i += 1) await page.mouse.wheel(0, -2000);
  await expect.poll(async () => (await seen(page)).k).toBeCloseTo(before.k * 24, 6);
  same(await under(page, { x: at.x + 80, y: at.y + 50 }), place);
  for (let i = 0; i < 4; i += 1) await page.mouse.wheel(0, 2000);
  await expect.poll(async () => (await seen(page)).k).toBeCloseTo(before.k / 3, 6);
});

test('the buttons enlarge about the middle, within the same limits', async ({ page }) => {
  const before = await seen(page);
  const box = (await drawing(page).boundingBox())!;
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  const place = await under(page, middle);
  const nearer = page.getByRole('button', { name: 'Nearer' });
  await nearer.click();
  expect((await seen(page)).k).toBeCloseTo(before.k * 1.4, 6);
  const now = await under(page, middle);
  expect(now.x).toBeCloseTo(place.x, 0);
  expect(now.y).toBeCloseTo(place.y, 0);
  for (let i = 0; i < 10; i += 1) await nearer.click();
  expect((await seen(page)).k).toBeCloseTo(before.k * 24, 6);
});

test.describe('by fingers', () => {
  test.use({ hasTouch: true });

  test('one pulls, and a second one zooms', async ({ page }) => {
    const session = await page.context().newCDPSession(page);
    const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...points: readonly (readonly number[])[]) =>
      session.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: points.map(([x, y, id]) => ({ x: x!, y: y!, id: id! })),
      });
    const before = await seen(page);
    const { x, y } = await empty(page);
    await send('touchStart', [x, y, 0]);
    await send('touchMove', [x + 15, y + 10, 0]);
    await send('touchMove', [x + 30, y + 20, 0]);
    same(await seen(page), { x: before.x + 30, y: before.y + 20 });
    // Both places stay under their fingers, while these go apart.
    await send('touchStart', [x + 30, y + 20, 0], [x + 30, y + 80, 1]);
    const [first, second] = [
      await under(page, { x: x + 30, y: y + 20 }),
      await under(page, { x: x + 30, y: y + 80 }),
    ];
    await send('touchMove', [x + 30, y + 20, 0], [x + 30, y + 110, 1]);
    await send('touchMove', [x + 40, y + 20, 0], [x + 40, y + 140, 1]);
    expect((await seen(page)).k).toBeCloseTo(before.k * 2, 6);
    same(await under(page, { x: x + 40, y: y + 20 }), first);
    same(await under(page, { x: x + 40, y: y + 140 }), second);
    const left = await seen(page);
    await send('touchEnd');
    await send('touchStart', [x, y, 0]);
    expect(await seen(page)).toEqual(left);
    await send('touchEnd');
  });

  test('a second finger lets go of what the first one holds, and both zoom', async ({ page }) => {
    const session = await page.context().newCDPSession(page);
    const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...points: readonly (readonly number[])[]) =>
      session.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: points.map(([x, y], id) => ({ x: x!, y: y!, id })),
      });
    const before = await seen(page);
    const handle = (await page.locator('[data-target^="tip:"]').first().boundingBox())!;
    const [x, y] = [handle.x + handle.width / 2, handle.y + handle.height / 2];
    await send('touchStart', [x, y]);
    await send('touchMove', [x, y - 30]);
    expect(await seen(page), 'while something is held the table stands still').toEqual(before);
    await send('touchStart', [x, y - 30], [x, y - 90]);
    await send('touchMove', [x, y - 15], [x, y - 105]);
    await send('touchMove', [x, y], [x, y - 120]);
    expect((await seen(page)).k).toBeCloseTo(before.k * 2, 6);
    await send('touchEnd');
    await expect(page.locator('summary', { hasText: 'What was done' })).toContainText('(0)');
  });
});

test.describe('of an attempt that is opened', () => {
  const lesson = (file: string) => `lessons/slanted-seam/${file}.attempt.json`;
  /** The pieces that lie outside the window on the table, by how many px at most. */
  const outside = (page: Page): Promise<string[]> =>
    drawing(page).evaluate((svg) => {
      const window = svg.getBoundingClientRect();
      return [...svg.querySelectorAll('.piece')].flatMap((piece) => {
        const box = piece.getBoundingClientRect();
        const over = Math.max(
          window.left - box.left,
          box.right - window.right,
          window.top - box.top,
          box.bottom - window.bottom,
        );
        return over > 0 ? [`${piece.getAttribute('data-piece') ?? ''} ${over.toFixed(1)}`] : [];
      });
    });

  test('another body is seen whole', async ({ page }) => {
    await page.setViewportSize({ width: 820, height: 1180 });
    const desk = new Desk(page);
    await desk.open('slanted-seam');
    await desk.push('Start at once');
    await page.locator('[data-target]').first().waitFor();
    await page
      .getByLabel('Attempt file')
      .setInputFiles(lesson('01-read-the-block/attempts/pass-largest-figure'));
    await desk.hasDone(8);
    await expect.poll(() => outside(page)).toEqual([]);
  });

  test('every piece is seen while it grows by its allowances', async ({ page }) => {
    await page.setViewportSize({ width: 1440, height: 900 });
    await page.goto('/attempt/');
    await page.waitForFunction(() => document.documentElement.dataset['theme'] !== undefined);
    await page.getByLabel('Attempt file').setInputFiles(lesson('13-walk-the-seams/attempts/pass-woven'));
    const slider = page.getByRole('slider');
    await page.locator('.piece').first().waitFor();
    // From where they have no allowances yet.
    for (let at = 55; at <= 75; at += 1) {
      await slider.fill(String(at));
      await expect.poll(() => outside(page), `after command ${at}`).toEqual([]);
    }
  });
});
