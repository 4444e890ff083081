import type { Command, Work } from '../../../recipe/types.ts';
import type { Cause } from '../../types.ts';

/** What a wrong procedure sees: the table before the step, the step as it is worked rightly from there, and how the learner's table ended. */
export interface Situation {
  readonly before: Work;
  readonly right: readonly Command[];
  readonly rightly: Work;
  /** The learner's own commands of the step, from which amounts are read; and the table they made. */
  readonly own: readonly Command[];
  readonly after: Work;
}

/** A wrong way of working the step, carried out as commands; `cause` names it with its amount. */
export interface Suspect {
  readonly cause: Cause;
  readonly commands: readonly Command[];
  /** Its amount was read off the learner's table: such a suspect fits more easily, and comes after those that had nothing to choose. */
  readonly fitted?: true;
}

/** A kind of wrong procedure: gives what it would have done here, none where it does not apply. */
export type Procedure = (situation: Situation) => readonly Suspect[];

export const isMove = (c: Command): c is Extract<Command, { do: 'turn' | 'pivot' }> =>
  c.do === 'turn' || c.do === 'pivot';
