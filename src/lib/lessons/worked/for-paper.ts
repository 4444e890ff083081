import { apply } from '../../recipe/apply.ts';
import type { StepReplay } from '../../recipe/replay.ts';
import type { Fabric, Work } from '../../recipe/types.ts';
import type { Lesson } from '../types.ts';
import { workedStep } from './index.ts';

/** The tables of a step: before it, worked rightly from there, and the learner's own where they worked it on the screen. */
export interface PaperTables {
  readonly before: Work;
  readonly worked: Work;
  readonly own: Work | undefined;
}

/**
 * The tables that paper is held against at a step. Earlier steps are the learner's own where they were worked on the screen; those that were not
 * are worked rightly from what lies before them, so that somebody who works on paper alone needs nothing on the screen. Throws RangeError
 * when the lesson has no such step.
 */
export function paperTables(
  lesson: Lesson,
  steps: ReadonlyMap<string, StepReplay>,
  id: string,
  start: Work,
  fabric: Fabric,
): PaperTables {
  let before = start;
  /** Whether the learner's own tables still follow on from `before`. */
  let own = true;
  for (const step of lesson.steps) {
    const given = steps.get(step.id);
    const mine = own && given !== undefined && given.commands.length > 0 ? given.after : undefined;
    const worked = (): Work => {
      let work = before;
      for (const command of workedStep(step, before, fabric)) {
        const next = apply(work, command);
        if ('work' in next) work = next.work;
      }
      return work;
    };
    if (step.id === id) return { before, worked: worked(), own: mine };
    if (mine) before = mine;
    else {
      const next = worked();
      // A step that leaves the paper as it is (something read or laid over) breaks no chain.
      if (next.pieces !== before.pieces || next.lines !== before.lines) own = false;
      before = next;
    }
  }
  throw new RangeError(`the lesson '${lesson.id}' has no step '${id}'`);
}
