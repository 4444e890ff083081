import type { StepRule } from '../grading/types.ts';
import type { BlockForm } from '../pattern/block.ts';
import type { CommandName, Fabric } from '../recipe/types.ts';

/** A hint ladder: shown when a finding with one of `codes` (or any, when empty) is open; first rungs first. */
export interface HintLadder {
  readonly codes: readonly string[];
  readonly rungs: readonly string[];
}

/** A value in the parameters of a worked solution. */
export type Param = string | number | boolean | readonly Param[] | { readonly [key: string]: Param };

/** How a step is worked: `by` names a solver of `worked/`, the rest is what it is told. Lengths in mm, angles in radians. */
export interface WorkedBy {
  readonly by: string;
  readonly [param: string]: Param;
}

export interface LessonStep extends StepRule {
  readonly title: string;
  /** Skill id, stable. */
  readonly skill: string;
  /** Tool offered first; `tools` lists all of the step. */
  readonly tools: readonly CommandName[];
  /** About 25 short lines of plain text; blank line = new paragraph; lines that start with '- ' are list items. */
  readonly text: readonly string[];
  readonly hints: readonly HintLadder[];
  /** The cautions to show (ids of strings/cautions). */
  readonly cautions: readonly string[];
  /** What the tool `identify` asks to be pointed out, in order; left out: what the course asks. */
  readonly asked?: readonly string[];
  /** Left out by the steps of the main lesson, which are worked by their ids. */
  readonly worked?: WorkedBy;
}

/** A step as it is worked: what marks it, how it is worked rightly and what it practises may be fetched later. */
export type StepToWork = Omit<LessonStep, 'checks' | 'worked' | 'skill'>;

export interface Lesson {
  readonly id: string;
  /** Its place in the course, from 1; none outside of it. */
  readonly number?: number;
  readonly title: string;
  readonly summary: string;
  /** Content version: goes up when a step's rules change. */
  readonly content: number;
  readonly figure: string;
  /** Form of the block in which attempts start; then the half front is the paper to work on. */
  readonly form?: BlockForm;
  readonly fabrics: readonly Fabric[];
  /** The paper that its lengths are measured on; left out: full size. */
  readonly scale?: 'half';
  /** Lesson ids that should come before. */
  readonly needs: readonly string[];
  /** Steps that are done when it begins; their commands come first in every attempt. Left out: none. */
  readonly given?: readonly LessonStep[];
  readonly steps: readonly LessonStep[];
}

/** All steps of an exercise, those that are done when it begins first. */
export const allSteps = <Step>(exercise: {
  readonly given?: readonly Step[];
  readonly steps: readonly Step[];
}): readonly Step[] => [...(exercise.given ?? []), ...exercise.steps];

/** A lesson that can be begun. What its steps are marked by may come later, and with it the texts of all steps but the first. */
export interface LessonToWork extends Omit<Lesson, 'given' | 'steps'> {
  readonly given?: readonly StepToWork[];
  readonly steps: readonly StepToWork[];
}
