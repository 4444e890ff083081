import { expect, test, type Page } from '@playwright/test';
import '../../src/lib/recipe/commands/index.ts';
import { drillLesson } from '../../src/lib/lessons/drills/lesson.ts';
import { fromFragment } from '../../src/lib/lessons/drills/link.ts';
import { variantOf } from '../../src/lib/lessons/drills/variant.ts';
import { workedLesson } from '../../src/lib/lessons/worked/index.ts';
import { toText } from '../../src/lib/recipe/save.ts';
import type { Attempt, Command } from '../../src/lib/recipe/types.ts';
import { drillWords } from '../../src/lib/strings/drills.ts';

/** The finished attempt of a drill, as its file. */
function fileOf(fragment: string, edit: (commands: readonly Command[]) => readonly Command[] = (c) => c) {
  const parsed = fromFragment(fragment);
  if ('problem' in parsed) throw new Error(fragment);
  const lesson = drillLesson(variantOf(parsed.ok), drillWords('mm'));
  const attempt: Attempt = {
    format: 'pin-and-pivot/recipe',
    version: 1,
    lesson: { id: lesson.id, content: lesson.content },
    block: { figure: lesson.figure, form: lesson.form! },
    fabric: parsed.ok.fabric,
    seed: 0,
    commands: edit(workedLesson(lesson, parsed.ok.fabric).commands),
  };
  return { name: 'drill.attempt.json', mimeType: 'application/json', buffer: Buffer.from(toText(attempt)) };
}

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
  const link = page.getByLabel('Link');
  await expect(link).toHaveValue(/\/practice\/#pivot\.\d+\.woven\.strict\.3$/);
  const sent = await link.inputValue();
  const task = await page.locator('.task').textContent();
  await page.getByRole('button', { name: 'Another one like it' }).click();
  await expect(link).not.toHaveValue(sent);
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
  await page.getByRole('button', { name: 'Check', exact: true }).click();
  await expect(page.getByText(/needs work/i).first()).toBeVisible();
  await expect(page.getByText(/comes of this: The part was not turned far enough/)).toBeVisible();
  // The file of another drill is refused, and what lies on the table stays.
  await page.getByLabel('Attempt file').setInputFiles(fileOf('slash.78.woven.usual.3'));
  await expect(page.getByText(/expected an attempt of drill-slash-77/)).toBeVisible();
});
