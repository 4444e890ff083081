import { expect, test } from '@playwright/test';
import { chainLength, pointAtLength } from '../../src/lib/geometry/chain.ts';
import { replay } from '../../src/lib/recipe/replay.ts';
import { sampleAttempt } from '../recipe/sample.ts';
import { penHand } from './support/hand.ts';
import { Desk, touchHand, type Point } from './support/table.ts';

/** The line that the sample draws, as a hand runs along it: points in mm of the front, from beyond the shoulder to beyond the side. */
function sampleStroke(): Point[] {
  const { chain } = replay(sampleAttempt('F2', 'knit', { upTo: 'style-line' })).work.lines[0]!;
  const whole = chainLength(chain);
  const inner = Array.from({ length: 81 }, (_, i) => pointAtLength(chain, (whole * i) / 80));
  const past = (p: Point, q: Point): Point => ({ x: 2 * p.x - q.x, y: 2 * p.y - q.y });
  return [past(inner[0]!, inner[1]!), ...inner, past(inner.at(-1)!, inner.at(-2)!)];
}

/** Draws in one stroke through places of the front, as the table lies. */
async function stroke(desk: Desk, points: readonly Point[]): Promise<void> {
  await desk.bring(points.map((mm) => ({ mm })));
  const places: Point[] = [];
  for (const mm of points) places.push(await desk.place(mm));
  await desk.hand.press(places[0]!);
  for (const place of places.slice(1)) await desk.hand.move(place);
  await desk.picture(`stroke-held-${(await desk.svg.boundingBox())!.width.toFixed(0)}`);
  await desk.hand.lift();
}

/** The stroke is drawn, accepted, shaped further by a point, and drawn anew with a kink that is found. */
async function drawn(desk: Desk, name: string): Promise<void> {
  await desk.startAt('03-style-line');
  await desk.onStep('Draw the style line');
  await desk.take('Style line in one stroke');
  const points = sampleStroke();
  await stroke(desk, points);
  await desk.hasDone(1);
  await desk.picture(`stroke-${name}`);
  const line = await desk.drawn('in line');
  const off = Math.max(...points.slice(1, -1).map((p) => line.nearest(p).off));
  expect(off).toBeLessThan(4);
  expect(await desk.check()).toBe('accepted');
  await expect(desk.finding('line-shape/kinks', 'right')).toHaveCount(1);

  await desk.take('Style line');
  // How many points the curve has goes by how large it was drawn.
  const rings = (await desk.handles()).filter((id) => id.startsWith('point:'));
  const middle = rings[Math.floor(rings.length / 2)]!;
  const ring = await desk.at(middle);
  const scale = await desk.scale();
  await desk.drag(middle, () => Promise.resolve({ x: ring.x, y: ring.y + 20 * scale }));
  await desk.hasDone(2);
  const shaped = await desk.drawn('in line');
  const moved = line.points.map((p) => shaped.nearest(p).off);
  expect(Math.max(...moved)).toBeGreaterThan(10);
  // Near the ends it lies as it was drawn.
  expect(moved[10]! + moved.at(-10)!).toBeLessThan(3);

  await desk.take('Style line in one stroke');
  const gable = points.map((p, i) => {
    const deep = Math.max(0, 1 - Math.abs(i - 44) / 6);
    return { x: p.x, y: p.y + 75 * deep };
  });
  await stroke(desk, gable);
  await desk.hasDone(3);
  expect(await desk.check()).toBe('needsWork');
  await expect(desk.finding('line-shape/kinks')).toContainText('counted');
  await desk.picture(`stroke-${name}-kinked`);
  expect(desk.errors).toEqual([]);
}

test('the style line is drawn in one stroke of the mouse', ({ page }) => drawn(new Desk(page), 'mouse'));

test.describe('on a tablet', () => {
  test.use({ viewport: { width: 1024, height: 768 } });
  test('the style line is drawn in one stroke of the pen', async ({ page }) => {
    await drawn(new Desk(page, await penHand(page)), 'pen');
  });
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
  test('the style line is drawn in one stroke of the finger', async ({ page }) => {
    await drawn(new Desk(page, await touchHand(page)), 'finger');
  });
});
