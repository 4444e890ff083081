import { apply } from './apply.ts';
import { tableFor } from './table-start.ts';
import type { Attempt, Command, Recipe, Replayed, Unfollowed, Work } from './types.ts';

/**
 * All commands of a recipe in the order of the list, on its block. A command that cannot be followed is left out and
 * listed. Pure: the same recipe gives the same bits everywhere. Throws RangeError for a block that does not exist
 * (`parseRecipe` lets none through), Error for one that is not at hand (`tableFor`).
 */
export function replay(recipe: Recipe): Replayed {
  let work = tableFor(recipe.block);
  const unfollowed: Unfollowed[] = [];
  for (let index = 0; index < recipe.commands.length; index++) {
    const command = recipe.commands[index]!;
    const next = apply(work, command);
    if ('work' in next) work = next.work;
    else unfollowed.push({ index, command, refused: next.refused });
  }
  return { work, unfollowed };
}

/** The table before and after one step's commands. `index` of an unfollowed command is its place in the whole list. */
export interface StepReplay {
  readonly before: Work;
  readonly after: Work;
  readonly commands: readonly Command[];
  readonly unfollowed: readonly Unfollowed[];
}

/** The ids of all steps that an attempt is replayed by: those that are done when its exercise begins, then those to be worked. */
export const idsOf = <Step extends { readonly id: string }>(exercise: {
  readonly given?: readonly Step[];
  readonly steps: readonly Step[];
}): readonly string[] => [...(exercise.given ?? []), ...exercise.steps].map(({ id }) => id);

/**
 * The attempt step by step, in one pass: commands go by the order of their steps and, within a step, by the order in
 * which they were given, so that something put right in an earlier step later on comes where it belongs. A command
 * without a step, or of a step that is not listed, goes with the step of the command before it (the first step when
 * none comes before).
 */
export function replayByStep(attempt: Recipe | Attempt, stepIds: readonly string[]): Map<string, StepReplay> {
  const stepAt = stepsOf(attempt.commands, stepIds);
  const order = inOrder(stepAt);
  const given = order === undefined ? attempt.commands : order.map((index) => attempt.commands[index]!);
  const steps = new Map<string, StepReplay>();
  let work = tableFor(attempt.block);
  let done = 0;
  for (let i = 0; i < stepIds.length; i++) {
    const before = work;
    const unfollowed: Unfollowed[] = [];
    const first = done;
    for (; done < given.length && stepAt[order?.[done] ?? done] === i; done++) {
      const command = given[done]!;
      const next = apply(work, command);
      if ('work' in next) work = next.work;
      else unfollowed.push({ index: order?.[done] ?? done, command, refused: next.refused });
    }
    steps.set(stepIds[i]!, { before, after: work, commands: given.slice(first, done), unfollowed });
  }
  return steps;
}

/** The place in the lesson of each command's step. */
function stepsOf(commands: readonly Command[], stepIds: readonly string[]): readonly number[] {
  let last = 0;
  return commands.map(({ step }) => {
    // Most commands come in the same step as the one before.
    if (step !== undefined && step !== stepIds[last]) {
      const at = stepIds.indexOf(step);
      if (at >= 0) last = at;
    }
    return last;
  });
}

/** The indices of commands by the order of their steps; undefined where they stand in it already, as nearly always. */
function inOrder(stepAt: readonly number[]): readonly number[] | undefined {
  for (let k = 1; k < stepAt.length; k++)
    if (stepAt[k]! < stepAt[k - 1]!) return stepAt.map((_, i) => i).sort((p, q) => stepAt[p]! - stepAt[q]!);
  return undefined;
}
