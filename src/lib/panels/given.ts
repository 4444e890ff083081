import type { Lesson, LessonToWork } from '../lessons/types.ts';
import { workedFrom } from '../lessons/worked/solvers.ts';
import { tableFor } from '../recipe/table-start.ts';
import type { BlockChoice, Command, Fabric } from '../recipe/types.ts';
import { fetchCommands } from '../table/phases/commands.ts';

/** The commands of the steps that are done when an exercise begins. Rejects where what they need cannot be fetched. */
export async function givenOn(
  block: BlockChoice,
  { given = [] }: Lesson,
  fabric: Fabric,
): Promise<readonly Command[]> {
  await fetchCommands(given.flatMap(({ tools }) => tools));
  return workedFrom(tableFor(block), given, fabric).commands;
}
export type GivenOn = typeof givenOn;

/** Fetches what replays and shows the given ones among the commands of an attempt; gives the others. Rejects where it cannot be had. */
export async function ownOf(
  { given = [] }: Pick<LessonToWork, 'given'>,
  commands: readonly Command[],
): Promise<readonly Command[]> {
  const steps = given.map(({ id }) => id);
  const isOwn = ({ step = '' }: Command): boolean => !steps.includes(step);
  await fetchCommands(commands.flatMap((command) => (isOwn(command) ? [] : command.do)));
  return commands.filter(isOwn);
}
