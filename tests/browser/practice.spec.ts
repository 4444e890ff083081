import { expect, test, type Page } from '@playwright/test';
import { workedFrom, workedLesson } from '../../src/lib/lessons/worked/index.ts';
import type { Command } from '../../src/lib/recipe/types.ts';
import { errorsOf } from './support/attempt.ts';
import { fileOf, lessonOf, typeStep } from './support/drill.ts';
import { Keys } from './support/keys.ts';
import { unfold } from './support/typed.ts';

async function open(page: Page, fragment: string): Promise<void> {
  await page.goto(`/practice/#${fragment}`);
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.getByRole('button', { name: 'Check', exact: true }).waitFor();
}

test('a drill is made in the room, and its link says all of it', async ({ page }) => {
  await page.goto('/practice/');
  await page.getByLabel('Move a dart: pin and pivot').check();
  await page.getByLabel('Strict').check();
  await page.getByRole('button', { name: 'Make a drill' }).click();
  await page.getByText('Send this drill, or work it on paper').click();
  const link = page.getByLabel('Link');
  await expect(link).toHaveValue(/\/practice\/#pivot\.\d+\.woven\.strict\.3$/);
  const sent = await link.inputValue();
  const task = await page.locator('.task').textContent();
  await page.getByRole('button', { name: 'Another one like it' }).click();
  await expect(page).not.toHaveURL(sent);
  await expect(page.locator('.task')).toBeVisible();
  await page.goto(sent);
  await expect(page.locator('.task')).toHaveText(task!);
});

test('a link that cannot be used says where and what was expected, and the room stays usable', async ({
  page,
}) => {
  await page.goto('/practice/#slash.12.silk.usual.0');
  await expect(page.getByRole('alert')).toContainText('fabric');
  await expect(page.getByRole('alert')).toContainText('silk');
  await expect(page.getByRole('button', { name: 'Make a drill' })).toBeVisible();
});

test('a finished attempt is opened and marked again; an edited one gets the mark its commands deserve', async ({
  page,
}) => {
  const fragment = 'slash.77.woven.usual.3';
  await open(page, fragment);
  await page.getByLabel('Attempt file').setInputFiles(fileOf(fragment));
  await page.locator('nav button[data-step="move"][aria-current="step"]').waitFor();
  await page.getByRole('button', { name: 'Check', exact: true }).click();
  await expect(page.getByText(/accepted/i).first()).toBeVisible();

  const halfTurned = fileOf(fragment, (all) =>
    all.map((c) => (c.do === 'turn' ? { ...c, by: { share: 0.5 } } : c)),
  );
  await page.getByLabel('Attempt file').setInputFiles(halfTurned);
  await expect(page.locator('[data-verdict]')).toHaveCount(0);
  await page.getByRole('button', { name: 'Check', exact: true }).click();
  await expect(page.getByText(/needs work/i).first()).toBeVisible();
  // The finding names the cause itself; nothing is said beside it.
  await expect(page.getByText(/The part was not turned far enough; .* are left/)).toBeVisible();
  // The file of another drill is refused, and what lies on the table stays.
  await page.getByLabel('Attempt file').setInputFiles(fileOf('slash.78.woven.usual.3'));
  await expect(page.getByText(/expected an attempt of drill-slash-77/)).toBeVisible();
});

test('the scale of the lengths can be chosen, and the link says it', async ({ page }) => {
  await page.goto('/practice/');
  await page.getByLabel('Back off, true and cap').check();
  await page.getByLabel('Full size').check();
  await page.getByRole('button', { name: 'Make a drill' }).click();
  await page.getByText('Send this drill, or work it on paper').click();
  await expect(page.getByLabel('Link')).toHaveValue(/\/practice\/#2\.finish\.\d+\.woven\.usual\.3\.full$/);
  await expect(page.locator('.task')).toContainText('measured at full size');
});

test('at half scale what is asked, typed and read are lengths of the same paper', async ({ page }) => {
  const fragment = '2.finish.12.woven.usual.3.half';
  await open(page, fragment);
  const far = fileOf(fragment, (all) =>
    all.flatMap((c): Command[] => {
      if (c.do !== 'draw-slash') return c.step === 'working-dart' ? [c] : [];
      return 'on' in c.from ? [{ ...c, from: { ...c.from, at: c.from.at + 0.08 } }] : [];
    }),
  );
  await page.getByLabel('Attempt file').setInputFiles(far);
  await page.locator('nav button[data-step="slash-line"][aria-current="step"]').waitFor();
  await expect(page.getByText('On the shoulder seam: 30 mm (measured at half scale)')).toBeVisible();
  await expect(page.getByText(/half scale, as all lengths here/)).toBeVisible();
  await page.getByRole('button', { name: 'Check', exact: true }).click();
  // 0.08 of a shoulder of 127.2 mm at full size is 10.2 mm, 5.1 mm on the paper.
  await expect(page.getByText(/measured 24.9 mm, expected 30 mm, tolerance 1.6 mm/).first()).toBeVisible();
  await unfold(page, 'typed');
  const form = page.locator('form[data-form="draw-slash"]');
  await expect(form.getByLabel('On the')).toContainText('right shoulder seam (63.6 mm)');
  await expect(form.getByLabel('measured', { exact: true })).toHaveCount(0);
});

/* Each kind that came after the first five, once by key presses alone: every step is typed into the forms, checked, and accepted. */
for (const fragment of [
  '2.finish.12.woven.usual.3.half',
  '2.fullness.7.knit.usual.3.any',
  '2.parallel.5.woven.usual.3.full',
  '2.several.9.woven.usual.3.any',
  '2.princess.4.woven.usual.3.half',
  '2.line.3.woven.usual.3.full',
  '2.line.8.knit.usual.3.half',
  '2.block.7.woven.usual.3.any',
  '2.ready.5.woven.usual.3.half',
  '2.ready.2.knit.usual.3.full',
])
  test(`the drill ${fragment} by keys alone, every step accepted`, async ({ page }) => {
    test.setTimeout(240_000);
    const { lesson, parsed } = lessonOf(fragment);
    const { start, commands } = workedLesson(lesson, parsed.ok.fabric);
    const errors = errorsOf(page);
    const keys = new Keys(page);
    await page.goto(`/practice/#${fragment}`);
    await page.getByRole('button', { name: 'Begin' }).waitFor();
    await keys.button('Begin');
    let { work } = workedFrom(start, lesson.given ?? [], parsed.ok.fabric);
    for (const [i, step] of lesson.steps.entries()) {
      const typed = await typeStep(page, keys, step.id, commands, work, lesson.scale);
      expect(typed.verdict, `${step.id}: ${typed.off.join(' | ')}`).toBe('accepted');
      work = typed.work;
      if (i < lesson.steps.length - 1) await keys.button('Next step');
    }
    expect(errors).toEqual([]);
  });

test('the room suggests a drill with the reason, first the plain one, later what is due', async ({
  page,
}) => {
  await page.clock.install({ time: new Date('2026-03-02T09:00:00') });
  await page.goto('/practice/');
  const next = page.getByRole('region', { name: 'Next for you' });
  await expect(next).toContainText('To begin with: Waist dart to the side seam, slash and spread');
  await expect(next).toContainText('Because:');
  const keys = new Keys(page);
  await keys.button('Practise this');
  await expect(page).toHaveURL(/#slash\.\d+\.woven\.usual\.3$/);

  // A mark that needs work, by a file that is opened; a day later the skill is due.
  const fragment = new URL(page.url()).hash.slice(1);
  await page.getByRole('button', { name: 'Begin' }).click();
  const halfTurned = fileOf(fragment, (all) =>
    all.map((c) => (c.do === 'turn' ? { ...c, by: { share: 0.5 } } : c)),
  );
  await page.getByLabel('Attempt file').setInputFiles(halfTurned);
  await page.locator('nav button[data-step="move"][aria-current="step"]').waitFor();
  await page.getByRole('button', { name: 'Check', exact: true }).click();
  await page.locator('[data-verdict="needsWork"]').waitFor();
  // It is written down after it is shown, by what is fetched for it.
  await page.waitForLoadState('networkidle');

  await page.clock.setSystemTime(new Date('2026-03-03T09:00:00'));
  await page.goto('/practice/');
  await page.reload();
  await expect(next).toContainText('Due: Waist dart to the side seam, slash and spread');
  await expect(next).toContainText('Because: last tried yesterday, and it did not come right.');
  await next.getByRole('button', { name: 'Practise this' }).click();
  await expect(page.locator('.task')).toContainText('Slash and spread.');
});

test('a drill that was begun says where the learner stands, and goes on from there', async ({ page }) => {
  await page.goto('/practice/#slash.587608.woven.usual.3');
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.getByRole('button', { name: 'Leave it, flagged' }).click();
  await expect(page.getByRole('heading', { name: '2. Draw the slash line' })).toBeVisible();
  await page.reload();
  await expect(page.getByText('you are at step 2')).toBeVisible();
  await page.getByRole('button', { name: 'Go on' }).click();
  await expect(page.getByRole('heading', { name: '2. Draw the slash line' })).toBeVisible();
});
