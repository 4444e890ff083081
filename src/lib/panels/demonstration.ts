import type { Lesson, LessonStep } from '../lessons/types.ts';
import { workedLesson, workedStep } from '../lessons/worked/index.ts';
import type { Command, Fabric, Work } from '../recipe/types.ts';
import { fetchFor } from '../table/phases/index.ts';
import type { LessonSession } from './session.svelte.ts';

/** What is played: commands over a table. */
export interface Demonstration {
  readonly start: Work;
  readonly commands: readonly Command[];
}

/** With everything that is needed to show it on the table. */
async function shown({ start, commands }: Demonstration): Promise<Demonstration> {
  await fetchFor(commands.map((command) => command.do));
  return { start, commands };
}

/** The worked solution of one step over the learner's own table before it. Rejects when its drawing cannot be fetched. */
export const stepDemonstration = (step: LessonStep, before: Work, fabric: Fabric): Promise<Demonstration> =>
  shown({ start: before, commands: workedStep(step, before, fabric) });

/** The whole lesson, worked on the lesson's own demo figure. Rejects as `stepDemonstration`. */
export const lessonDemonstration = (lesson: Lesson, fabric: Fabric): Promise<Demonstration> =>
  shown(workedLesson(lesson, fabric));

/**
 * The worked solution of the step that is open, or of the whole lesson; undefined while no step is. Throws as `rules` of the session, rejects as
 * `stepDemonstration`.
 */
export function demonstrationOf(
  { rules, snapshot }: Pick<LessonSession, 'rules' | 'snapshot'>,
  all: boolean,
): Promise<Demonstration> | undefined {
  const context = snapshot?.context;
  const step = rules.steps.find(({ id }) => id === context?.step) ?? rules.steps[0];
  const replayed = step && context?.steps.get(step.id);
  if (!context || !replayed) return undefined;
  const { fabric } = context.base;
  return all ? lessonDemonstration(rules, fabric) : stepDemonstration(step, replayed.before, fabric);
}
