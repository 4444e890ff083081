import '../../recipe/commands/index.ts';
import type { Command, Fabric, Work } from '../../recipe/types.ts';
import type { LessonStep } from '../types.ts';
import * as design from './design.ts';
import * as finish from './finish.ts';
import { commandsOf, type Worked } from './give.ts';

const WORKED: Readonly<Record<string, Worked>> = {
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
 * a stored one. Empty for a step nobody has worked out.
 */
export function workedStep(step: LessonStep, before: Work, fabric: Fabric): readonly Command[] {
  const worked = WORKED[step.id];
  return worked ? commandsOf(worked, step, before, fabric) : [];
}
