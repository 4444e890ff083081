import { apply } from '../../recipe/apply.ts';
import type { StepReplay } from '../../recipe/replay.ts';
import type { Command, Fabric, Work } from '../../recipe/types.ts';
import type { Lesson, LessonStep } from '../types.ts';
import { workedStep } from './index.ts';

/** The tables of a step: before it, worked rightly from there, and the learner's own where they worked it on the screen. */
export interface PaperTables {
  readonly before: Work;
  readonly worked: Work;
  readonly own: Work | undefined;
  /** The darts that were made with the pin, without a cut. */
  readonly pinned: ReadonlySet<string>;
}

/** The table once a step was worked rightly, and by which commands. */
function rightly(step: LessonStep, before: Work, fabric: Fabric): Pick<StepReplay, 'after' | 'commands'> {
  const commands = workedStep(step, before, fabric);
  let after = before;
  for (const command of commands) {
    const next = apply(after, command);
    if ('work' in next) after = next.work;
  }
  return { after, commands };
}

/** The darts that these commands make with the pin. */
const pinnedBy = (commands: readonly Command[]): readonly string[] =>
  commands.flatMap((command) => (command.do === 'pivot' ? [command.slash] : []));

/**
 * The tables that paper is held against at a step. Up to the last step that was worked on the screen, what lies before a step is the learner's own,
 * right or not; from there on it is worked rightly, so that somebody who works on paper alone needs nothing on the screen. Throws
 * RangeError when the lesson has no such step.
 */
export function paperTables(
  lesson: Lesson,
  steps: ReadonlyMap<string, StepReplay>,
  id: string,
  start: Work,
  fabric: Fabric,
): PaperTables {
  const last = lesson.steps.findLastIndex((step) => (steps.get(step.id)?.commands.length ?? 0) > 0);
  const pinned = new Set<string>();
  let before = start;
  for (const [i, step] of lesson.steps.entries()) {
    const given = i <= last ? steps.get(step.id) : undefined;
    if (step.id === id) {
      const own = given !== undefined && given.commands.length > 0 ? given.after : undefined;
      const worked = rightly(step, before, fabric);
      for (const id of pinnedBy([...(given?.commands ?? []), ...worked.commands])) pinned.add(id);
      return { before, worked: worked.after, own, pinned };
    }
    const done = given ?? rightly(step, before, fabric);
    for (const id of pinnedBy(done.commands)) pinned.add(id);
    before = done.after;
  }
  throw new RangeError(`the lesson '${lesson.id}' has no step '${id}'`);
}
