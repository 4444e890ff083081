import { expect, test, type Page } from '@playwright/test';
import { sampleAttempt } from '../recipe/sample.ts';
import {
  check,
  cutShort,
  drawing,
  enter,
  errorsOf,
  lesson,
  LESSON_PATH,
  markText,
  openAttempt,
  stepButton,
  stretchOf,
  tableOf,
} from './support/attempt.ts';
import { giveTyped, typedOf, unfold } from './support/typed.ts';

const sample = sampleAttempt(lesson.figure, 'knit');

/** All a person sees of the work: the drawing, the table in words, the list of steps with their marks. */
interface Seen {
  readonly drawing: string;
  readonly words: string;
  readonly steps: string;
}

async function look(page: Page): Promise<Seen> {
  await unfold(page, 'twin');
  return {
    drawing: await drawing(page),
    words: await page.locator('details[data-twin]').innerText(),
    steps: (await page.locator('nav li').allInnerTexts()).join(' | '),
  };
}

const ready = (page: Page): Promise<void> =>
  page.getByRole('button', { name: 'Check', exact: true }).waitFor();

test.describe('reload in the middle of a step gives the same table and the same mark', () => {
  for (const step of lesson.steps.map(({ id }) => id))
    test(step, async ({ page }) => {
      const errors = errorsOf(page);
      const { from, to } = stretchOf(sample, step);
      // All of the steps before, half of this one from a file, and one more command by hand.
      const given = from + Math.floor((to - from) / 2);
      await enter(page);
      if (given > 0) await openAttempt(page, cutShort(sample, given));
      if (given === from && from > 0) await check(page).then(() => goOn(page));
      await expect(stepButton(page, step)).toHaveAttribute('aria-current', 'step');
      await unfold(page, 'typed');
      await giveTyped(page, typedOf(sample.commands[given]!, tableOf(cutShort(sample, given))));
      await expect(page.getByText(/^What was done in this step/)).toContainText(`(${given + 1 - from})`);
      const verdict = await check(page);
      const mark = await markText(page);
      const before = await look(page);

      await page.reload();
      await ready(page);
      await expect(stepButton(page, step)).toHaveAttribute('aria-current', 'step');
      // The mark is there without another check, which would be told of as one more attempt.
      expect(await markText(page)).toBe(mark);
      expect(await look(page)).toEqual(before);
      expect(await check(page)).toBe(verdict);
      expect(await markText(page)).toBe(mark);
      // What was given can still be taken back, command by command.
      await page.getByRole('button', { name: 'Undo', exact: true }).click();
      await expect(page.getByText(/^What was done in this step/)).toContainText(`(${given - from})`);
      expect(errors).toEqual([]);
    });
});

const goOn = (page: Page): Promise<void> => page.getByRole('button', { name: 'Next step' }).click();

test.describe('stopped without warning', () => {
  const half = cutShort(sample, stretchOf(sample, 'style-line').to);

  /** The middle of the third point of the style line on the page. */
  async function grip(page: Page): Promise<{ x: number; y: number }> {
    const box = (await page.locator('[data-target="point:2"] .hit').boundingBox())!;
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  }
  async function dragged(page: Page, by: number): Promise<void> {
    const { x, y } = await grip(page);
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + by / 2, y, { steps: 3 });
    await page.mouse.move(x + by, y, { steps: 3 });
  }

  test('a reload in the middle of a drag loses the drag and nothing else', async ({ page }) => {
    await enter(page);
    await openAttempt(page, half);
    await dragged(page, 12);
    await page.mouse.up();
    const kept = await look(page);
    await dragged(page, 40);
    await expect.poll(() => drawing(page)).not.toBe(kept.drawing);
    await page.reload();
    await page.mouse.up();
    await ready(page);
    expect(await look(page)).toEqual(kept);
  });

  for (const how of ['closed', 'killed'] as const)
    test(`a page that is ${how} right after a command comes back before or after it, never broken`, async ({
      page,
      context,
    }) => {
      await enter(page);
      await openAttempt(page, half);
      let now = page;
      let count = await done(now);
      for (let round = 0; round < 4; round += 1) {
        await dragged(now, round % 2 === 0 ? 10 : -10);
        await now.mouse.up();
        const seen = await look(now);
        // One more, and the page is gone before anyone has looked: whether it was kept is the browser's affair.
        await dragged(now, 6);
        await now.mouse.up();
        if (how === 'closed') await now.close();
        else await kill(now);
        now = await context.newPage();
        const errors = errorsOf(now);
        await now.goto(LESSON_PATH);
        await ready(now);
        const after = await look(now);
        const kept = (await done(now)) - count;
        expect([1, 2]).toContain(kept);
        if (kept === 1) expect(after).toEqual(seen);
        else expect(after.drawing).not.toBe(seen.drawing);
        count += kept;
        expect(errors).toEqual([]);
      }
    });

  test('a page that is killed while its record is being written comes back with the record before', async ({
    page,
    context,
  }) => {
    await enter(page);
    await openAttempt(page, half);
    const marked = { verdict: await check(page), text: await markText(page) };
    const seen = await look(page);
    await page.evaluate(() => {
      // The record is put, and its transaction is kept from ending: one request calls for the next.
      const put = IDBObjectStore.prototype.put;
      IDBObjectStore.prototype.put = function (...given) {
        const again = (): void => {
          document.title = 'writing';
          this.get('nothing').onsuccess = again;
        };
        again();
        return put.apply(this, given);
      };
    });
    await dragged(page, 10);
    await page.mouse.up();
    expect(await done(page)).toBe(2);
    await expect(page).toHaveTitle('writing');
    await kill(page);
    const next = await context.newPage();
    await next.goto(LESSON_PATH);
    await ready(next);
    expect(await look(next)).toEqual(seen);
    expect({ verdict: await check(next), text: await markText(next) }).toEqual(marked);
  });
});

/** How many commands the step has. */
async function done(page: Page): Promise<number> {
  const text = await page.getByText(/^What was done in this step/).textContent();
  return Number(/\((\d+)\)/.exec(text ?? '')?.[1]);
}

/** Kills the renderer behind the page, as a machine short of memory does. */
async function kill(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const crashed = page.waitForEvent('crash');
  void session.send('Page.crash').catch(() => undefined);
  await crashed;
  await page.close();
}
