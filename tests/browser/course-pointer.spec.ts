import { expect, test, type Page } from '@playwright/test';
import { Desk, touchHand, type Goal } from './support/table.ts';

/*
 * Three lessons of the course with the mouse on the table: a dart slashed and turned, one pinned and swung, one shared between two
 * slashes. With PIN_SHOTS and PIN_LOOK=width,height,colour they leave pictures to be looked at.
 */
const WAIST = 'right/waist-dart';
const [OWN, OTHER] = [`turn:${WAIST}:freed`, `turn:${WAIST}:rest`] as const;

const [width, height, colour] = (process.env['PIN_LOOK'] ?? '').split(',');
// On a phone there are fingers.
const narrow = Number(width || 1440) < 600;
test.use({ hasTouch: narrow });

async function begin(page: Page, lesson: string): Promise<Desk> {
  if (width && height) await page.setViewportSize({ width: Number(width), height: Number(height) });
  if (colour === 'dark' || colour === 'light') await page.emulateMedia({ colorScheme: colour });
  const desk = new Desk(page, narrow ? await touchHand(page) : undefined);
  await desk.open(lesson);
  await desk.push('Start at once');
  return desk;
}

/** So far along an edge of the front, as it is drawn. */
const onEdge =
  (desk: Desk, edge: string, part: number): Goal =>
  async () => {
    const line = await desk.drawn(edge);
    return desk.place(line.pointAt(part * line.length));
  };
const bust =
  (desk: Desk): Goal =>
  async () =>
    desk.place(await desk.mark('right/bust-point'));
const between =
  (desk: Desk, from: Goal, to: Goal, part = 0.5): Goal =>
  async () => {
    const [a, b] = [await desk.find(from), await desk.find(to)];
    return { x: a.x + (b.x - a.x) * part, y: a.y + (b.y - a.y) * part };
  };

async function workingDart(desk: Desk): Promise<void> {
  await desk.drag(`tip:${WAIST}`, `to:${WAIST}`);
  await desk.hasDone(1);
  await desk.accepted();
}

/** Pulls a slash line from an edge to the bust point; meanwhile it is written how far from the ends of the edge it begins. */
async function slashLine(desk: Desk, edge: string, ends: readonly string[], shot: string): Promise<void> {
  const from = onEdge(desk, edge, 0.66);
  await desk.dragTo(from, between(desk, from, bust(desk)), bust(desk));
  for (const end of ends)
    await expect.poll(() => desk.written()).toContainEqual(expect.stringMatching(`^${end} [\\d.]+ mm$`));
  await desk.picture(shot);
  await desk.hand.lift();
}

test('waist-to-side by mouse: draw, cut, turn, prove; every step is accepted', async ({ page }) => {
  const desk = await begin(page, 'waist-to-side');
  await workingDart(desk);

  await slashLine(desk, 'right/side', ['underarm', 'waist corner at the side'], 'side-draw');
  await desk.hasDone(1);
  await desk.picture('side-drawn');
  await desk.accepted();

  await desk.dragTo('cut:slash', between(desk, 'cut:slash', 'tip:slash', 0.6));
  await desk.picture('side-cutting');
  await desk.hand.move(await desk.at('tip:slash'));
  await desk.hand.lift();
  await desk.hasDone(1);
  await desk.take('Turn');
  await desk.picture('side-cut');
  await desk.dragTo(OWN, between(desk, OWN, OTHER));
  await expect
    .poll(async () => (await desk.written()).join(' | '))
    .toMatch(/gap [\d.]+ mm.*opened [\d.]+ mm/);
  await expect(page.locator('path.ghost')).toHaveCount(1);
  await desk.picture('side-half-turned');
  await desk.hand.move(await desk.at(OTHER));
  await desk.hand.lift();
  await desk.hasDone(2);
  await desk.picture('side-closed');
  await desk.accepted();

  await desk.tap('piece:front');
  await desk.hasDone(1);
  await desk.picture('side-proved');
  await desk.accepted('Finish');
  expect(desk.errors).toEqual([]);
});

test('mid-armhole by mouse: mark, pin, swing and trace; no paper is cut', async ({ page }) => {
  const desk = await begin(page, 'mid-armhole-by-pivot');
  await workingDart(desk);

  await desk.picture('pivot-begin');
  await desk.tap(onEdge(desk, 'right/armhole', 0.5));
  // The mark alone is no command.
  await desk.hasDone(0);
  await expect(desk.handle('mark')).toBeVisible();
  await desk.picture('pivot-marked');
  await desk.dragTo(OWN, between(desk, OWN, OTHER));
  await expect(page.locator('path.traced')).toHaveCount(1);
  await expect(page.locator('path.to-trace')).toHaveCount(1);
  await desk.picture('pivot-swing');
  await desk.hand.move(await desk.at(OTHER));
  await desk.hand.lift();
  await desk.hasDone(1);
  await expect(page.locator('path.traced')).toHaveCount(0);
  await desk.picture('pivot-done');
  await desk.accepted();

  await desk.tap('piece:front');
  await desk.accepted('Finish');
  expect(desk.errors).toEqual([]);
});

test('split-a-dart by mouse: two lines, two cuts, half of the dart into each', async ({ page }) => {
  const desk = await begin(page, 'split-a-dart');
  await workingDart(desk);

  await slashLine(desk, 'right/side', ['underarm'], 'split-draw');
  await desk.hasDone(1);
  // The second one is picked and placed, without pulling. Fingers that look nearer in between would let it go.
  const shoulder = onEdge(desk, 'right/shoulder', 0.55);
  if (narrow) await desk.drag(shoulder, bust(desk));
  else {
    await desk.tap(shoulder);
    await desk.tap(bust(desk));
  }
  await desk.hasDone(2);
  await desk.picture('split-drawn');
  await desk.accepted();

  await desk.drag('cut:slash', 'tip:slash');
  await desk.drag('cut:slash-1', 'tip:slash-1');
  await desk.hasDone(2);
  await desk.take('Turn');
  await desk.picture('split-cut');
  await desk.type('share', '50 %');
  await desk.push('Turn to close 50 %');
  await desk.hasDone(3);
  await desk.picture('split-half');
  await desk.dragTo(OWN, between(desk, OWN, OTHER));
  await desk.picture('split-half-turned');
  await desk.hand.move(await desk.at(OTHER));
  await desk.hand.lift();
  await desk.hasDone(4);
  await desk.picture('split-closed');
  await desk.accepted();

  await desk.tap('piece:front');
  await desk.accepted('Finish');
  expect(desk.errors).toEqual([]);
});
