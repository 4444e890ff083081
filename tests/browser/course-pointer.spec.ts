import { expect, test } from '@playwright/test';
import {
  begin,
  between,
  bust,
  narrow,
  onEdge,
  OTHER,
  OWN,
  slashLine,
  workingDart,
} from './support/course.ts';

/*
 * Three lessons of the course with the mouse on the table: a dart slashed and turned, one pinned and swung, one shared between two
 * slashes. With PIN_SHOTS and PIN_LOOK=width,height,colour they leave pictures to be looked at.
 */
test.use({ hasTouch: narrow });

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
  // What is unfinished is taken back first; what is done in another step only where the button says so.
  await desk.push('Undo');
  await expect(desk.handle('mark')).toHaveCount(0);
  await desk.onStep('Mark, pin, swing and trace');
  await desk.push('Undo in step 1');
  await desk.onStep('Draw the working dart');
  await desk.hasDone(0);
  await desk.push('Redo');
  await desk.hasDone(1);
  await expect(page.getByRole('button', { name: 'Next step' })).toBeVisible();
  await desk.push('Next step');
  await desk.tap(onEdge(desk, 'right/armhole', 0.5));
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
  await desk.drag('cut:slash-2', 'tip:slash-2');
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
