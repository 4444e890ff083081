import { gradeLesson } from '../grading/grade.ts';
import type { Mark } from '../grading/types.ts';
import { inOrder } from '../lessons/divergence.ts';
import type { Lesson } from '../lessons/types.ts';
import { startWork } from '../recipe/start.ts';
import type { Attempt, Command, Work } from '../recipe/types.ts';
import { scenesOf } from '../table/replay.ts';

/** An attempt as it is watched: marked anew from its commands, in the order in which they are marked. */
export interface MarkedAttempt {
  readonly start: Work;
  readonly commands: readonly Command[];
  /** The table after so many commands. */
  readonly tables: readonly Work[];
  readonly marks: ReadonlyMap<string, Mark>;
  /** How many commands are done at the end of each step. */
  readonly ends: ReadonlyMap<string, number>;
}

/** Marks and replays an attempt. Throws as `gradeLesson`; RangeError for a figure that does not exist. */
export function markedAttempt(lesson: Lesson, attempt: Attempt): MarkedAttempt {
  const start = startWork(attempt.block);
  const ordered = inOrder(lesson, attempt);
  const { commands } = ordered;
  const tables = [start, ...scenesOf(start, commands, true).map(({ after }) => after)];
  const marks = new Map(gradeLesson(lesson, ordered).map((mark) => [mark.step, mark]));
  let end = 0;
  const ends = lesson.steps.map(({ id }): [string, number] => {
    end += commands.filter(({ step }) => step === id).length;
    return [id, end];
  });
  return { start, commands, tables, marks, ends: new Map(ends) };
}
