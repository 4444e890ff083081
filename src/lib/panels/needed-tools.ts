import type { LessonToWork } from '../lessons/types.ts';
import type { Command, CommandName } from '../recipe/types.ts';

/** The tools of the step after `step`; none after the last one, or where there is no such step. */
export function toolsAfter({ steps }: LessonToWork, step: string | undefined): readonly CommandName[] {
  const now = steps.findIndex(({ id }) => id === step);
  return steps[now + 1]?.tools ?? [];
}

/** What has to be there for an attempt: its own commands, and the tools of every step that may be gone to. `step`: the one that it stands at. */
export function toolsNeeded(
  { steps }: LessonToWork,
  commands: readonly Command[],
  step = '',
): readonly CommandName[] {
  const ids = steps.map(({ id }) => id);
  const reached = [step, ...commands.map((one) => one.step ?? '')].map((id) => ids.indexOf(id));
  const furthest = Math.max(0, ...reached);
  return [...commands.map((one) => one.do), ...steps.slice(0, furthest + 1).flatMap(({ tools }) => tools)];
}
