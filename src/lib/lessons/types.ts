import type { StepRule } from '../grading/types.ts';
import type { CommandName, Fabric } from '../recipe/types.ts';

/** A hint ladder: shown when a finding with one of `codes` (or any, when empty) is open; first rungs first. */
export interface HintLadder {
  readonly codes: readonly string[];
  readonly rungs: readonly string[];
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
}

export interface Lesson {
  readonly id: string;
  readonly title: string;
  readonly summary: string;
  /** Content version: goes up when a step's rules change. */
  readonly content: number;
  readonly figure: string;
  readonly fabrics: readonly Fabric[];
  /** Lesson ids that should come before. */
  readonly needs: readonly string[];
  readonly steps: readonly LessonStep[];
}
