import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Page } from '@playwright/test';
import { lessonIds, loadLesson } from '../../src/cli/load-lessons.ts';
import { blockOf } from '../../src/lib/lessons/block.ts';
import { workedStep } from '../../src/lib/lessons/worked/index.ts';
import type { Lesson } from '../../src/lib/lessons/types.ts';
import { inOrder } from '../../src/lib/panels/course-needs.ts';
import { apply } from '../../src/lib/recipe/apply.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import { errorsOf, stepButton } from './support/attempt.ts';
import { Keys } from './support/keys.ts';
import { typedOf, type Typed } from './support/typed.ts';

const lessons = inOrder(lessonIds().map((id) => loadLesson(id)!));
const small = lessons.find(({ id }) => id === 'extend-a-dart')!;
const first = lessons[0]!;
const path = (lesson: Lesson, mark = ''): string => `/lesson/${lesson.id}/${mark}`;

interface TypedStep {
  readonly id: string;
  readonly typed: readonly Typed[];
}

/** What has to be typed in each step to give the commands of the worked solution. Throws where a command has no form. */
function typedLesson(lesson: Lesson): readonly TypedStep[] {
  let work = startWork(blockOf(lesson));
  return lesson.steps.map((step) => ({
    id: step.id,
    typed: workedStep(step, work, lesson.fabrics[0]!).map((command) => {
      const typed = typedOf(command, work);
      const next = apply(work, command);
      if ('refused' in next) throw new Error(`${step.id}: ${JSON.stringify(next.refused)}`);
      work = next.work;
      return typed;
    }),
  }));
}

const card = (page: Page, lesson: Lesson) => page.locator(`[data-lesson="${lesson.id}"]`);
const states = (page: Page): Promise<Record<string, string>> =>
  page
    .locator('[data-lesson]')
    .evaluateAll((all) =>
      Object.fromEntries(all.map((one) => [one.getAttribute('data-lesson'), one.getAttribute('data-state')])),
    );

/** Works the steps of a lesson by keys, in the forms; `next` goes on from each. */
async function work(
  keys: Keys,
  steps: readonly TypedStep[],
  next: (step: TypedStep, last: boolean) => Promise<void>,
): Promise<void> {
  for (const [i, step] of steps.entries()) {
    await expect(stepButton(keys.page, step.id)).toHaveAttribute('aria-current', 'step');
    if (step.typed.length > 0) await keys.unfold('By typed values');
    for (const [done, typed] of step.typed.entries()) {
      await keys.give(typed);
      await expect(keys.page.getByText(/^What was done in this step/)).toContainText(`(${done + 1})`);
    }
    await next(step, i === steps.length - 1);
  }
}

test('the map has every lesson in the order of the course, each with its link, and Tab goes through them', async ({
  page,
}) => {
  const keys = new Keys(page);
  await page.goto('/');
  const links = page.locator('[data-lesson] h3 a');
  await expect(links).toHaveText(lessons.map(({ title }) => title));
  for (const lesson of lessons) {
    await keys.to(`[data-lesson="${lesson.id}"] h3 a`);
    await keys.press('Tab');
    await expect(card(page, lesson).getByRole('link', { name: `Test out of ${lesson.title}` })).toBeFocused();
  }
  // What the lines show is also told, of the lessons that there are.
  const there = new Set(lessons.map(({ id }) => id));
  for (const { id, needs } of lessons) {
    const told = page.locator(`[data-lesson="${id}"] .needs`);
    await expect(told).toHaveCount(needs.some((need) => there.has(need)) ? 1 : 0);
  }
});

test('each lesson lies below what it builds on; on a phone the lessons are one column, and nothing is wider than it', async ({
  page,
}) => {
  await page.goto('/');
  const box = async (id: string) => (await page.locator(`[data-lesson="${id}"]`).boundingBox())!;
  for (const { id, needs } of lessons)
    for (const need of needs.filter((one) => lessons.some((lesson) => lesson.id === one))) {
      const [above, below] = [await box(need), await box(id)];
      expect(above.y + above.height, `${need} above ${id}`).toBeLessThan(below.y);
    }
  for (const width of [390, 320]) {
    await page.setViewportSize({ width, height: 844 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    let y = 0;
    for (const { id } of lessons) {
      const next = await box(id);
      expect(next.y).toBeGreaterThan(y);
      y = next.y;
    }
  }
});

test('a lesson that is under way says so on the map, and the way on leads to it', async ({ page }) => {
  await page.goto('/');
  await expect(page.getByRole('link', { name: /^Begin: 1\. / })).toBeVisible();
  await page.goto(path(small));
  await page.getByRole('button', { name: 'Start at once' }).click();
  await page.getByRole('button', { name: 'Leave it, flagged' }).click();
  await expect(stepButton(page, small.steps[1]!.id)).toHaveAttribute('aria-current', 'step');
  await page.getByRole('link', { name: 'Pin & Pivot' }).click();
  await expect(card(page, small)).toHaveAttribute('data-state', 'begun');
  await expect(card(page, small).locator('.state')).toHaveText(/under way, step 2 of 2, 1 flagged/);
  await page.getByRole('link', { name: `Go on: ${small.number}. ${small.title}` }).click();
  await expect(stepButton(page, small.steps[1]!.id)).toHaveAttribute('aria-current', 'step');
});

test('testing out by keys: no hints, no solution, no mark before the end; it counts for what the lesson builds on', async ({
  page,
}) => {
  const errors = errorsOf(page);
  const keys = new Keys(page);
  const steps = typedLesson(small);
  await page.goto('/');
  await keys.to(`[data-lesson="${small.id}"] .test`);
  await keys.press('Enter');
  await expect(page.getByRole('heading', { level: 2, name: 'Test out' })).toBeVisible();
  await expect(page.getByRole('listitem')).toHaveText([`${first.number}. ${first.title}`]);
  await keys.button('Begin the test');
  await work(keys, steps, async (_, last) => {
    for (const name of ['Check', 'A hint', 'Show me how, on my own table', 'Leave it, flagged'])
      await expect(page.getByRole('button', { name, exact: true })).toHaveCount(0);
    await expect(page.locator('[data-verdict]')).toHaveCount(0);
    // What is asked, and not how it is done.
    await expect(page.getByRole('heading', { name: 'What is asked' })).toBeVisible();
    await expect(page.getByText('What to do, and why')).toHaveCount(0);
    await keys.button(last ? 'Hand the test in' : 'Next step');
  });
  await expect(page.locator('[data-test-result]')).toHaveAttribute('data-test-result', 'passed');
  await expect(page.getByRole('heading', { name: 'Passed' })).toBeFocused();
  await keys.to('a', 'To the course');
  await keys.press('Enter');
  await expect(card(page, small)).toHaveAttribute('data-state', 'tested');
  expect(await states(page)).toEqual(
    Object.fromEntries(
      lessons.map(({ id }) => [id, id === small.id || id === first.id ? 'tested' : 'fresh']),
    ),
  );
  await expect(card(page, first).locator('.state')).toContainText(
    `tested out with ${small.number}. ${small.title}`,
  );
  // The lesson itself is as it was: not begun.
  await page.goto(path(small));
  await expect(page.getByRole('button', { name: 'Start at once' })).toBeVisible();
  expect(errors).toEqual([]);
});

test('a test that is not passed says what was short, counts for nothing, and begins again empty', async ({
  page,
}) => {
  await page.goto(path(small, '#test'));
  await page.getByRole('button', { name: 'Begin the test' }).click();
  const keys = new Keys(page);
  const steps = typedLesson(small);
  const outlines = () =>
    page.locator('[data-piece] path').evaluateAll((all) => all.map((path) => path.getAttribute('d')).join());
  await page.locator('[data-piece] path').first().waitFor();
  const empty = await outlines();
  await keys.unfold('By typed values');
  await keys.give(steps[0]!.typed[0]!);
  await page.getByRole('button', { name: 'Next step' }).click();
  // A step that was not worked is named before the test is over.
  await keys.button('Hand the test in');
  const asks = page.getByRole('group', { name: 'One step is not worked yet' });
  await expect(asks.getByRole('heading')).toBeFocused();
  await expect(asks).toContainText(`${small.steps[1]!.title}. As it stands, the test cannot be passed`);
  await keys.button(`Go to “${small.steps[1]!.title}”`);
  await expect(asks).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Hand the test in' })).toBeFocused();
  await keys.button('Hand the test in');
  await keys.button('Hand it in as it is');
  const result = page.locator('[data-test-result]');
  await expect(result).toHaveAttribute('data-test-result', 'not-passed');
  await expect(result).toContainText(`Not accepted: ${small.steps[1]!.title}.`);
  await expect(page.locator('[data-verdict]')).toHaveAttribute('data-verdict', 'notReady');
  await stepButton(page, small.steps[0]!.id).click();
  await expect(page.locator('[data-verdict]')).toHaveAttribute('data-verdict', 'accepted');
  // What was handed in is over: there is nothing to take hold of, and a reload begins anew.
  await expect(page.locator('[data-target]')).toHaveCount(0);
  await expect(page.locator('[data-typed]')).toHaveCount(0);
  await expect(result).not.toContainText('as a hint');
  await page.getByRole('button', { name: 'Begin the test again' }).click();
  await expect(page.getByRole('button', { name: 'Next step' })).toBeFocused();
  // Numbers that were read in the marks are those of another figure.
  await expect.poll(outlines).not.toBe(empty);
  // The lesson's own text is help, and the result says so.
  await keys.unfold('The lesson’s text: counts as a hint');
  await expect(page.getByText('You read the lesson’s text of this step.')).toBeVisible();
  await expect(page.getByText('What was done in this step (0)')).toBeVisible();
  await page.getByRole('button', { name: 'Next step' }).click();
  await page.getByRole('button', { name: 'Hand the test in' }).click();
  await expect(page.getByRole('group', { name: '2 steps are not worked yet' })).toContainText(
    small.steps.map(({ title }) => title).join(', '),
  );
  await page.getByRole('button', { name: 'Hand it in as it is' }).click();
  await expect(result).toContainText(`With the lesson’s text as a hint: ${small.steps[0]!.title}.`);
  // What it would have taught is one press away.
  await page.getByRole('link', { name: 'To the lesson' }).click();
  await expect(page.getByRole('button', { name: 'Start at once' })).toBeVisible();
  await page.goto('/');
  await expect(card(page, small)).toHaveAttribute('data-state', 'fresh');
});

test('a test is kept beside the work in the lesson, and goes on after a reload', async ({ page }) => {
  await page.goto(path(small));
  await page.getByRole('button', { name: 'Start at once' }).click();
  await page.getByRole('button', { name: 'Leave it, flagged' }).click();
  await expect(stepButton(page, small.steps[1]!.id)).toHaveAttribute('aria-current', 'step');

  await page.goto('/');
  await page.getByRole('link', { name: `Test out of ${small.title}` }).click();
  await page.getByRole('button', { name: 'Begin the test' }).click();
  await expect(stepButton(page, small.steps[0]!.id)).toHaveAttribute('aria-current', 'step');
  const keys = new Keys(page);
  await keys.unfold('By typed values');
  await keys.give(typedLesson(small)[0]!.typed[0]!);
  await expect(page.getByText('What was done in this step (1)')).toBeVisible();
  await page.reload();
  await page.getByRole('button', { name: 'Begin the test' }).click();
  await expect(page.getByText('What was done in this step (1)')).toBeVisible();

  await page.goto('/');
  await page.getByRole('link', { name: small.title, exact: true }).click();
  await expect(stepButton(page, small.steps[1]!.id)).toHaveAttribute('aria-current', 'step');
  await stepButton(page, small.steps[0]!.id).click();
  await expect(page.getByText('What was done in this step (0)')).toBeVisible();
});

test('every opening shows the result, and home, openings and tests keep the rules that axe can measure, light and dark', async ({
  page,
}) => {
  test.setTimeout(240_000);
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    for (const address of ['/', ...lessons.map((lesson) => path(lesson)), path(small, '#test')]) {
      await page.goto(address);
      await page.getByRole('heading', { level: 2 }).first().waitFor();
      if (address.startsWith('/lesson') && !address.endsWith('#test'))
        await expect(page.getByRole('img', { name: 'The front as it lies at the end' })).toBeVisible();
      const { violations } = await new AxeBuilder({ page })
        .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
        .analyze();
      const found = violations.map(({ id, nodes }) => ({
        id,
        at: nodes.map(({ target }) => target.join(' ')),
      }));
      expect(found, `${address} ${colorScheme}`).toEqual([]);
    }
  }
});
