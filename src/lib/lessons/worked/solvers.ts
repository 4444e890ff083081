import { apply } from '../../recipe/apply.ts';
import type { Command, Fabric, Work } from '../../recipe/types.ts';
import type { LessonStep } from '../types.ts';
import * as design from './design.ts';
import * as finish from './finish.ts';
import { finishDarts, makeFullness, partAtDarts } from './finish-darts.ts';
import { commandsOf, type Worked } from './give.ts';
import { givenCommands } from './given.ts';
import { lineAcross } from './line-across.ts';
import { moveDarts } from './move-darts.ts';
import { nearLine } from './near-line.ts';
import { readDart } from './read.ts';
import { parallelSlashes, spacedSlashes } from './several-slashes.ts';

/** Solvers by the name that a step's `worked.by` calls them by. To add one: its file, one line here. */
export const SOLVERS: ReadonlyMap<string, Worked> = new Map([
  ['commands', givenCommands],
  ['read-dart', readDart],
  ['move-darts', moveDarts],
  ['near-line', nearLine],
  ['line-across', lineAcross],
  ['notches', design.notches],
  ['working-darts', design.workingDarts],
  ['connectors', design.connectors],
  ['move-along-line', design.moveDart('right', 'start')],
  ['move-along-line-end', design.moveDart('left', 'end')],
  ['separate', design.separate],
  ['leftover', finish.leftover],
  ['allowances', finish.allowances],
  ['label-and-grain', finish.labelAndGrain],
  ['walk-the-seams', finish.walkTheSeams],
  ['spaced-slashes', spacedSlashes],
  ['parallel-slashes', parallelSlashes],
  ['finish-darts', finishDarts],
  ['fullness', makeFullness],
  ['part-at-darts', partAtDarts],
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

/** What a row of worked steps comes to: the commands in order, and the table after them. */
export interface WorkedRow {
  readonly commands: readonly Command[];
  readonly work: Work;
}

/** Steps worked one after the other from a table. Throws as `workedStep`. */
export function workedFrom(start: Work, steps: readonly LessonStep[], fabric: Fabric): WorkedRow {
  let work = start;
  const commands: Command[] = [];
  for (const step of steps)
    for (const command of workedStep(step, work, fabric)) {
      const next = apply(work, command);
      if ('work' in next) work = next.work;
      commands.push(command);
    }
  return { commands, work };
}
