import { expect, test } from '@playwright/test';
import { Desk } from './support/table.ts';

/** Opens a table with a style line, and takes hold of its second point. */
async function holding(desk: Desk): Promise<{ x: number; y: number }> {
  await desk.open();
  await desk.push('Start at once');
  await desk.openAttempt('lessons/slanted-seam/03-style-line/attempts/pass-five-points.attempt.json');
  await desk.onStep('Draw the style line');
  const at = await desk.at('point:1');
  await desk.hand.press(at);
  await desk.page.mouse.move(at.x + 12, at.y + 6);
  await expect(desk.page.locator('[data-state]')).toHaveAttribute('data-state', 'dragging');
  return at;
}

test('line, handle and readings follow the hand within the move, and moves that come faster than pictures are taken together', async ({
  page,
}) => {
  const desk = new Desk(page);
  const from = await holding(desk);
  const seen = await page.evaluate(async ({ x, y }) => {
    const svg = document.querySelector<SVGSVGElement>('.desk > svg')!;
    const now = () => ({
      line: svg.querySelector('[data-line="in line"]')!.getAttribute('d'),
      handle: svg.querySelector('[data-target="point:1"]')!.getBoundingClientRect().x,
      readings: [...svg.querySelectorAll('.label.reading')].map(({ textContent }) => textContent).join(' | '),
    });
    // When a move came is told to it, so that a busy machine does not draw the crowd apart.
    const began = performance.now() + 1000;
    const move = (by: number): void => {
      const init = { bubbles: true, clientX: x + by, clientY: y + by / 2, pointerId: 1, isPrimary: true };
      const event = new PointerEvent('pointermove', init);
      Object.defineProperty(event, 'timeStamp', { value: began + by / 100 });
      svg.dispatchEvent(event);
    };
    const picture = () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
    await picture();
    const before = now();
    move(20);
    const first = now();
    // In one go, far less than a picture's time.
    for (let by = 21; by <= 60; by++) move(by);
    const crowd = now();
    await picture();
    return { before, first, crowd, after: now() };
  }, from);
  // At once: the move was followed before anything else could happen.
  expect(seen.first.line).not.toBe(seen.before.line);
  expect(seen.first.readings).not.toBe(seen.before.readings);
  expect(seen.first.handle - seen.before.handle).toBeCloseTo(8, 0);
  // Those that crowd wait for the picture; then only the last one counts.
  expect(seen.crowd).toEqual(seen.first);
  expect(seen.after.handle - seen.first.handle).toBeCloseTo(40, 0);
  expect(seen.after.line).not.toBe(seen.first.line);
  await page.mouse.move(from.x + 60, from.y + 30);
  const held = await desk.drawn('in line');
  await desk.hand.lift();
  await desk.hasDone(2);
  // What was shown is what was stored.
  expect((await desk.drawn('in line')).points).toEqual(held.points);
  expect(desk.errors).toEqual([]);
});

test('a press takes the keyboard to what it takes up, or to the table', async ({ page }) => {
  const desk = new Desk(page);
  await holding(desk);
  await expect(desk.handle('point:1')).toBeFocused();
  await page.keyboard.press('Escape');
  await desk.hand.lift();
  await expect(page.locator('[data-state]')).toHaveAttribute('data-state', 'idle');
  const middle = await desk.place({ x: 60, y: 330 });
  await page.mouse.click(middle.x, middle.y);
  await expect(desk.svg).toBeFocused();
  expect(desk.errors).toEqual([]);
});
