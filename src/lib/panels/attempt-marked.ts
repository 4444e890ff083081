import { gradeLesson } from '../grading/grade.ts';
import type { Mark } from '../grading/types.ts';
import { inOrder } from '../lessons/divergence.ts';
import type { Lesson } from '../lessons/types.ts';
import { replay } from '../recipe/replay.ts';
import type { Attempt, Command, Work } from '../recipe/types.ts';
import { scenesOf } from '../table/replay.ts';

/** An attempt as it is watched: marked anew from its commands, in the order in which they are marked. */
export interface MarkedAttempt {
  /** The table on which it begins: with what was given done. */
  readonly start: Work;
  /** How many commands were given: the first of `commands` has this place in the attempt. */
  readonly given: number;
  readonly commands: readonly Command[];
  /** The table after so many commands. */
  readonly tables: readonly Work[];
  readonly marks: ReadonlyMap<string, Mark>;
  /** How many commands are done at the end of each step. */
  readonly ends: ReadonlyMap<string, number>;
}

/** Marks and replays an attempt. Throws as `gradeLesson`; RangeError for a figure that does not exist. */
export function markedAttempt(lesson: Lesson, attempt: Attempt): MarkedAttempt {
  const ordered = inOrder(lesson, attempt);
  const before = new Set(lesson.given?.map(({ id }) => id));
  const given = ordered.commands.filter(({ step }) => before.has(step!)).length;
  const start = replay({ ...ordered, commands: ordered.commands.slice(0, given) }).work;
  const commands = ordered.commands.slice(given);
  const tables = [start, ...scenesOf(start, commands, true).map(({ after }) => after)];
  const marks = new Map(gradeLesson(lesson, ordered).map((mark) => [mark.step, mark]));
  let end = 0;
  const ends = lesson.steps.map(({ id }): [string, number] => {
    end += commands.filter(({ step }) => step === id).length;
    return [id, end];
  });
  return { start, given, commands, tables, marks, ends: new Map(ends) };
}
