import type { LessonContext } from '../machines/lesson-context.ts';
import { ownLog } from '../progress/own-log.ts';
import type { Attempt, Command, StepHelp } from '../recipe/types.ts';

interface Taken {
  readonly steps: readonly string[];
  /** What an opened file said of help that was taken before. */
  readonly said: readonly StepHelp[];
  /** Hints shown by step, and steps whose worked solution was. */
  readonly hints: Readonly<Record<string, number>>;
  readonly shown: ReadonlySet<string>;
}

/** Help by step, in the order of the steps; steps without any are left out. */
export function helpBySteps({ steps, said, hints, shown }: Taken): readonly StepHelp[] {
  return steps
    .map((step): StepHelp => {
      const before = said.find((one) => one.step === step);
      return {
        step,
        hints: Math.max(hints[step] ?? 0, before?.hints ?? 0),
        shown: shown.has(step) || (before?.shown ?? false),
      };
    })
    .filter((one) => one.hints > 0 || one.shown);
}

/**
 * The attempt as it is saved or copied, with the help that was taken on the way. `given`: whether all of a step came from a file; of that only
 * the file can say. Never rejects.
 */
export async function withHelp(
  attempt: Attempt,
  { hints, steps }: LessonContext,
  given: (commands: readonly Command[]) => boolean,
): Promise<Attempt> {
  const { log } = await ownLog().load();
  const shown = new Set(
    log
      .filter((one) => one.exercise.id === attempt.lesson.id)
      .filter((one) => one.kind === 'worked' || (one.kind === 'mark' && one.worked))
      .map(({ step }) => step)
      .filter((step) => !given(steps.get(step)?.commands ?? [])),
  );
  const { help: said = [], ...rest } = attempt;
  const help = helpBySteps({ steps: [...steps.keys()], said, hints, shown });
  return help.length > 0 ? { ...rest, help } : rest;
}
