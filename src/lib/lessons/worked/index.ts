import '../../recipe/commands/index.ts';
import type { Command, Fabric, Work } from '../../recipe/types.ts';
import type { LessonStep } from '../types.ts';
import * as design from './design.ts';
import * as finish from './finish.ts';
import { commandsOf, type Worked } from './give.ts';
import { givenCommands } from './given.ts';
import { readDart } from './read.ts';

/** Solvers by the name that a step's `worked.by` calls them by. To add one: its file, one line here. */
export const SOLVERS: ReadonlyMap<string, Worked> = new Map([
  ['commands', givenCommands],
  ['read-dart', readDart],
]);

/** The steps of the main lesson, by their ids. */
const BY_STEP: Readonly<Record<string, Worked>> = {
  'read-the-block': design.readTheBlock,
  'open-out': design.openOut,
  'style-line': design.styleLine,
  notches: design.notches,
  'working-darts': design.workingDarts,
  connectors: design.connectors,
  'first-dart': design.moveDart('right', 'start'),
  'second-dart': design.moveDart('left', 'end'),
  separate: design.separate,
  leftover: finish.leftover,
  allowances: finish.allowances,
  'label-and-grain': finish.labelAndGrain,
  'walk-the-seams': finish.walkTheSeams,
};

/**
 * The commands that work a step rightly from the table as it lies before it: from the learner's own earlier work, not from
 * a stored one. Empty for a step nobody has worked out; throws RangeError when its solver does not exist.
 */
export function workedStep(step: LessonStep, before: Work, fabric: Fabric): readonly Command[] {
  const worked = step.worked ? SOLVERS.get(step.worked.by) : BY_STEP[step.id];
  if (step.worked && !worked) throw new RangeError(`there is no solver '${step.worked.by}'`);
  return worked ? commandsOf(worked, step, before, fabric) : [];
}
