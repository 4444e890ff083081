import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Page } from '@playwright/test';
import { loadLesson } from '../../src/cli/load-lessons.ts';
import { blockOf } from '../../src/lib/lessons/block.ts';
import { workedStep } from '../../src/lib/lessons/worked/index.ts';
import { apply } from '../../src/lib/recipe/apply.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import type { Command, Work } from '../../src/lib/recipe/types.ts';
import { courseAttempt, pass } from '../golden/course/case.ts';
import { errorsOf, openAttempt, stepButton } from './support/attempt.ts';
import { Keys } from './support/keys.ts';
import { typedOf } from './support/typed.ts';

/** Opens a lesson worked rightly up to a step, and works that step by keys, with its worked commands edited. */
async function workStep(
  page: Page,
  lessonId: string,
  stepId: string,
  edit: (right: readonly Command[], before: Work) => readonly Command[],
): Promise<void> {
  const lesson = loadLesson(lessonId)!;
  const keys = new Keys(page);
  await page.goto(`/lesson/${lessonId}/`);
  await page.getByRole('button', { name: 'Start at once' }).waitFor();
  await keys.button('Start at once');
  let work = startWork(blockOf(lesson));
  const earlier: Command[] = [];
  const give = (command: Command): void => {
    const next = apply(work, command);
    if ('refused' in next) throw new Error(JSON.stringify(next.refused));
    work = next.work;
  };
  for (const step of lesson.steps) {
    const right = workedStep(step, work, lesson.fabrics[0]!);
    if (step.id !== stepId) {
      right.forEach(give);
      earlier.push(...right);
      continue;
    }
    if (earlier.length > 0) {
      await openAttempt(page, { ...courseAttempt(lesson, pass(stepId, 'earlier')), commands: earlier });
      await keys.button('Check');
      await keys.button('Next step');
    }
    await expect(stepButton(page, stepId)).toHaveAttribute('aria-current', 'step');
    await keys.unfold('By typed values');
    for (const [n, command] of edit(right, work).entries()) {
      await keys.give(typedOf(command, work));
      await expect(page.getByText(/^What was done in this step/)).toContainText(`(${n + 1})`);
      give(command);
    }
    await keys.button('Check');
    await page.locator('[data-verdict]').waitFor();
    return;
  }
}

async function expectNoViolation(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => [id, nodes[0]?.target])).toEqual([]);
}

test('two shares that were exchanged are named beside the findings, which cannot tell', async ({ page }) => {
  const errors = errorsOf(page);
  // Half of the dart belongs into the shoulder, thirty-five hundredths into the neckline.
  const shares = [0.35, 0.5 / 0.65];
  await workStep(page, 'gathers-tucks-ease', 'move', (right) => {
    let n = 0;
    return right.map((c) => {
      const share = c.do === 'turn' ? shares[n++] : undefined;
      return c.do === 'turn' && share !== undefined ? { ...c, by: { share } } : c;
    });
  });
  const mark = page.locator('[data-verdict]');
  await expect(mark).toHaveAttribute('data-verdict', 'needsWork');
  const said = page.locator('.diagnosis');
  await expect(said).toHaveText(
    /^Your table is what comes of this: The two shares were given the other way round/,
  );
  await expect(mark).not.toContainText('the other way round');
  await page.screenshot({ path: test.info().outputPath('cause.png'), fullPage: true });
  await expectNoViolation(page);
  // It speaks of the table that was marked.
  await new Keys(page).button('Undo');
  await expect(said).toHaveCount(0);
  expect(errors).toEqual([]);
});

test('turned by the wrong leg: the finding names it, and nothing is said twice', async ({ page }) => {
  await workStep(page, 'waist-to-side', 'move', (right, before) => {
    const dart = before.pieces[0]!.darts.find(({ id }) => id === 'right/waist-dart')!;
    // The part on the other leg, turned as the freed one should be.
    const by = { angle: -dart.residual };
    return right.map((c) => (c.do === 'turn' ? { ...c, part: 'rest', by } : c));
  });
  const mark = page.locator('[data-verdict]');
  await expect(mark).toHaveAttribute('data-verdict', 'needsWork');
  await expect(mark).toContainText('The part was turned the way the other one should go');
  // Idle slices would have said it by now.
  await page.waitForTimeout(1500);
  await expect(page.locator('.diagnosis')).toHaveCount(0);
  await expectNoViolation(page);
});

test('a dart drawn beside the bust point comes of none of the known ways', async ({ page }) => {
  await workStep(page, 'french-dart', 'working-dart', (right) =>
    right.map((c) => (c.do === 'extend-dart' ? { ...c, to: { ...c.to, dx: 14, dy: -9 } } : c)),
  );
  await expect(page.locator('.diagnosis')).toHaveText(
    /^None of the known ways of going wrong makes this table/,
  );
});

test('where many places are right, a wrong one gets no cause', async ({ page }) => {
  await workStep(page, 'french-dart', 'pivot', (right) =>
    right.map((c) => (c.do === 'pivot' ? { ...c, from: { on: 'right/side', at: 0.62 } } : c)),
  );
  await expect(page.locator('[data-verdict]')).toHaveAttribute('data-verdict', 'needsWork');
  await page.waitForTimeout(1500);
  await expect(page.locator('.diagnosis')).toHaveCount(0);
});
