// Whoever has this file can give any command, on any block.
import '../../recipe/commands/index.ts';
import { startWork } from '../../recipe/start.ts';
import type { Fabric, Work } from '../../recipe/types.ts';
import { blockOf } from '../block.ts';
import { allSteps, type Lesson } from '../types.ts';
import { workedFrom, type WorkedRow } from './solvers.ts';

export { SOLVERS, workedFrom, workedStep } from './solvers.ts';

/** A whole lesson, worked on its own demo figure, with what is given in it: the table before, all commands in order, and the table after them. */
export function workedLesson(lesson: Lesson, fabric: Fabric): WorkedRow & { readonly start: Work } {
  const start = startWork(blockOf(lesson));
  return { start, ...workedFrom(start, allSteps(lesson), fabric) };
}
