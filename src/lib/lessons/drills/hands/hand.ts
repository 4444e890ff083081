import type { CommandName } from '../../../recipe/types.ts';
import type { DrillStepId } from '../steps.ts';
import type { Variant } from '../types.ts';

/** What a step of a drill is worked with. */
export interface Hand {
  readonly tools: readonly CommandName[] | ((v: Variant) => readonly CommandName[]);
  /** Left out: none. */
  readonly cautions?: readonly string[];
  /** What is to be pointed out, for `identify`. */
  readonly asked?: (v: Variant) => readonly string[];
}

/** What the steps of one kind of drill are worked with. */
export type Hands = Readonly<Partial<Record<DrillStepId, Hand>>>;

/** Shown wherever paper is cut. */
export const CUTTING: readonly string[] = ['scissors', 'blade', 'school-rules'];

export const DART: Hand = { tools: ['extend-dart'] };
