import { loadLesson } from '../../src/cli/load-lessons.ts';
import { gradeOne, gradeStep } from '../../src/lib/grading/grade.ts';
import type { Finding, Mark, StepContext } from '../../src/lib/grading/types.ts';
import type { LessonStep } from '../../src/lib/lessons/types.ts';
import { replayByStep } from '../../src/lib/recipe/replay.ts';
import type { Attempt, Command } from '../../src/lib/recipe/types.ts';
import { sampleAttempt, type STEPS, type Variations } from '../recipe/sample.ts';

export const lesson = loadLesson('slanted-seam')!;
export type StepId = (typeof STEPS)[number];

export const stepOf = (id: StepId): LessonStep => lesson.steps.find((step) => step.id === id)!;

/** The sample, up to a step, with that step's commands changed one by one (to none, one or several). */
export function edited(
  step: StepId,
  edit: (command: Command) => Command | readonly Command[] = (command) => command,
  {
    fabric = 'knit',
    figure = 'F2',
    ...variations
  }: Variations & { fabric?: Attempt['fabric']; figure?: string } = {},
): Attempt {
  const sample = sampleAttempt(figure, fabric, { ...variations, upTo: step });
  return { ...sample, commands: sample.commands.flatMap((c) => (c.step === step ? edit(c) : c)) };
}

export const markOf = (step: StepId, attempt: Attempt): Mark => gradeOne(lesson, step, attempt);

/** The one finding of a code (about one thing, when several are); fails when there is none. */
export function finding(mark: Mark, code: string, about: Record<string, string> = {}): Finding {
  const found = mark.findings.find(
    (f) => f.code === code && Object.entries(about).every(([key, value]) => f.about?.[key] === value),
  );
  if (!found) throw new Error(`no finding ${code} in ${mark.findings.map((f) => f.code).join(', ')}`);
  return found;
}

export const stateOf = (mark: Mark, code: string, about: Record<string, string> = {}) =>
  finding(mark, code, about).state;

/** What a step's checks get to see. */
export function contextOf(step: StepId, attempt: Attempt): StepContext {
  const ids = lesson.steps.map(({ id }) => id);
  return { ...replayByStep(attempt, ids).get(step)!, fabric: attempt.fabric, attempt };
}

export const gradeContext = (step: StepId, context: StepContext): Mark => gradeStep(stepOf(step), context);

/** Findings with their numbers to a millionth, so that rounding in the last bits does not tell them apart. */
export const rounded = (findings: readonly Finding[]): unknown =>
  JSON.parse(
    JSON.stringify(findings, (_, value: unknown) =>
      typeof value === 'number' ? Math.round(value * 1e6) / 1e6 + 0 : value,
    ),
  );
