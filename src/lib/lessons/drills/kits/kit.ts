import type { Draw } from '../kinds/kind.ts';
import type { StepRules } from '../rules/rule.ts';
import type { Variant } from '../types.ts';

/** What makes drills of one kind, or of a few that have their steps in common: a page fetches only the kit of its drill. */
export interface DrillKit {
  readonly of: (draw: Draw) => Variant;
  readonly rules: StepRules;
}
