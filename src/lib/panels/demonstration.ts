import { blockOf } from '../lessons/block.ts';
import type { Lesson, LessonStep } from '../lessons/types.ts';
import { workedStep } from '../lessons/worked/index.ts';
import { apply } from '../recipe/apply.ts';
import { startWork } from '../recipe/start.ts';
import type { Command, Fabric, Work } from '../recipe/types.ts';
// Whatever is worked is also shown.
import '../table/phases/cut.ts';
import '../table/phases/finish.ts';

/** What is played: commands over a table. */
export interface Demonstration {
  readonly start: Work;
  readonly commands: readonly Command[];
}

/** The worked solution of one step over the learner's own table before it. */
export function stepDemonstration(step: LessonStep, before: Work, fabric: Fabric): Demonstration {
  return { start: before, commands: workedStep(step, before, fabric) };
}

/** The whole lesson, worked on the lesson's own demo figure. */
export function lessonDemonstration(lesson: Lesson, fabric: Fabric): Demonstration {
  const start = startWork(blockOf(lesson));
  let work = start;
  const commands: Command[] = [];
  for (const step of lesson.steps)
    for (const command of workedStep(step, work, fabric)) {
      const next = apply(work, command);
      if ('work' in next) work = next.work;
      commands.push(command);
    }
  return { start, commands };
}
