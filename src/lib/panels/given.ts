import type { LessonStep } from '../lessons/types.ts';
import { workedFrom } from '../lessons/worked/solvers.ts';
import { tableFor } from '../recipe/table-start.ts';
import type { BlockChoice, Command, CommandName, Fabric } from '../recipe/types.ts';
import { fetchFor } from '../table/phases/index.ts';

/** The commands of the steps that are done when an exercise begins. Rejects where what they need cannot be fetched. */
export async function givenOn(
  block: BlockChoice,
  steps: readonly LessonStep[],
  fabric: Fabric,
): Promise<readonly Command[]> {
  await fetchFor(steps.flatMap(({ tools }): readonly CommandName[] => tools));
  return workedFrom(tableFor(block), steps, fabric).commands;
}
