import { expect, test } from '@playwright/test';
import { begin, between, bust, onEdge, OTHER, OWN, slashLine, workingDart } from './support/course.ts';
import type { Desk, Goal } from './support/table.ts';

/* More lessons of the course wholly on the table: a low dart, and fullness; and one with fingers on a phone. */

/** Cuts along a slash line to its tip, round its bend where it has one. */
async function cut(desk: Desk, slash: string, ...bends: readonly Goal[]): Promise<void> {
  await desk.drag(`cut:${slash}`, ...bends, `tip:${slash}`);
}

/** Pulls the leg of the waist dart on to the other one. */
async function closeWaist(desk: Desk): Promise<void> {
  await desk.drag(OWN, between(desk, OWN, OTHER), OTHER);
}

/** Waist dart to a low place of the side seam by scissors: from the working dart to the proof. */
async function throughTheSide(desk: Desk, part: number): Promise<void> {
  await workingDart(desk);
  await desk.take('Slash line');
  const from = onEdge(desk, 'right/side', part);
  await desk.drag(from, between(desk, from, bust(desk)), bust(desk));
  await desk.hasDone(1);
  await desk.take('Scissors to the bust point');
  await cut(desk, 'slash');
  await desk.hasDone(2);
  await desk.take('Turn');
  await closeWaist(desk);
  await desk.hasDone(3);
  await desk.accepted();
  await desk.tap('piece:front');
  await desk.accepted('Finish');
}

test('french-dart by mouse: slashed from low on the side, turned, proved', async ({ page }) => {
  const desk = await begin(page, 'french-dart');
  // The edge runs up from the waist: a quarter of it is three quarters of the way down.
  await throughTheSide(desk, 0.25);
  expect(desk.errors).toEqual([]);
});

test('gathers-tucks-ease by mouse: three slashes, shares of the angle, fullness of three kinds', async ({
  page,
}) => {
  const desk = await begin(page, 'gathers-tucks-ease');
  await workingDart(desk);
  for (const [i, edge] of ['right/shoulder', 'right/neckline', 'right/armhole'].entries()) {
    const from = onEdge(desk, edge, 0.5);
    await desk.drag(from, between(desk, from, bust(desk)), bust(desk));
    await desk.hasDone(i + 1);
  }
  await desk.accepted();
  const slashes = (await desk.handles()).filter((id) => id.startsWith('cut:')).map((id) => id.slice(4));
  for (const [i, one] of slashes.entries()) {
    await cut(desk, one);
    await desk.hasDone(i + 1);
  }
  await desk.take('Turn');
  // Half of the angle, then seven tenths of what is left (35 %), then the rest: the shares are the lesson's.
  for (const [i, share] of [50, 70].entries()) {
    await desk.choose('into', slashes[i]!);
    await desk.type('share', `${share} %`);
    await desk.push(`Turn to close ${share} %`);
    await desk.hasDone(slashes.length + i + 1);
  }
  await desk.choose('into', slashes[2]!);
  await closeWaist(desk);
  await desk.hasDone(slashes.length + 3);
  await desk.picture('gathers-turned');
  await desk.accepted();

  for (const [i, as] of ['gathers', 'tucks', 'ease'].entries()) {
    const one = slashes[i]!;
    await desk.choose('as', as);
    for (const way of ['before', 'after']) {
      const end = `over:${way}:${one}`;
      await desk.drag(end, between(desk, end, `mouth:${one}`, 0.2));
    }
    await desk.hasDone(0);
    await desk.tap(`mouth:${one}`);
    await desk.hasDone(1);
    await desk.picture(`gathers-${as}`);
    await desk.accepted(i === 2 ? 'Finish' : 'Next step');
  }
  expect(desk.errors).toEqual([]);
});

test.describe('with fingers on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('waist-to-side by touch: draw, cut, turn, prove', async ({ page }) => {
    const desk = await begin(page, 'waist-to-side', true);
    await workingDart(desk);
    await slashLine(desk, 'right/side', ['underarm', 'waist corner at the side'], 'touch-draw');
    await desk.hasDone(1);
    await desk.accepted();
    await cut(desk, 'slash');
    await desk.hasDone(1);
    await desk.take('Turn');
    await closeWaist(desk);
    await desk.hasDone(2);
    await desk.accepted();
    await desk.tap('piece:front');
    await desk.hasDone(1);
    await desk.accepted('Finish');
    expect(desk.errors).toEqual([]);
  });
});
