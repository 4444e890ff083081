import { expect, type Page } from '@playwright/test';
import '../../../src/lib/recipe/commands/index.ts';
import { drillLesson } from '../../../src/lib/lessons/drills/lesson.ts';
import { fromFragment } from '../../../src/lib/lessons/drills/link.ts';
import { variantOf } from '../../../src/lib/lessons/drills/variant.ts';
import { workedLesson } from '../../../src/lib/lessons/worked/index.ts';
import { apply } from '../../../src/lib/recipe/apply.ts';
import { toText } from '../../../src/lib/recipe/save.ts';
import type { Attempt, Command, Work } from '../../../src/lib/recipe/types.ts';
import { drillWords } from '../../../src/lib/strings/drills.ts';
import { stepButton } from './attempt.ts';
import type { Keys } from './keys.ts';
import { typedOf } from './typed.ts';

/** The drill of a link's fragment, as its lesson. */
export function lessonOf(fragment: string) {
  const parsed = fromFragment(fragment);
  if ('problem' in parsed) throw new Error(fragment);
  return { lesson: drillLesson(variantOf(parsed.ok), drillWords('mm')), parsed };
}

/** The finished attempt of a drill, as its file. */
export function fileOf(
  fragment: string,
  edit: (commands: readonly Command[]) => readonly Command[] = (c) => c,
) {
  const { lesson, parsed } = lessonOf(fragment);
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

/** Types the commands of a step into its forms, by keys, and checks it. Gives the table after it, and what the mark says is not right. */
export async function typeStep(
  page: Page,
  keys: Keys,
  step: string,
  commands: readonly Command[],
  before: Work,
  scale?: 'half',
): Promise<{ readonly work: Work; readonly verdict: string | null; readonly off: readonly string[] }> {
  await expect(stepButton(page, step)).toHaveAttribute('aria-current', 'step');
  await keys.unfold('By typed values');
  let work = before;
  let done = 0;
  for (const command of commands.filter((one) => one.step === step)) {
    await keys.give(typedOf(command, work, scale));
    const next = apply(work, command);
    if ('refused' in next) throw new Error(`${step}: ${JSON.stringify(next.refused)}`);
    work = next.work;
    done += 1;
    await expect(page.getByText(/^What was done in this step/)).toContainText(`(${done})`);
  }
  await keys.button('Check');
  const mark = page.locator('[data-verdict]');
  await mark.waitFor();
  const off = await mark.locator('li:not(.right)').allInnerTexts();
  return { work, verdict: await mark.getAttribute('data-verdict'), off };
}
