import type { Draw } from '../kinds/kind.ts';
import type { Hands } from '../hands/hand.ts';
import type { StepRules } from '../rules/rule.ts';
import type { Variant } from '../types.ts';

/**
 * What makes drills of one kind, or of a few that have their steps in common. A page fetches what its drill begins with, and the rules with the first
 * mark.
 */
export interface DrillKit {
  readonly of: (draw: Draw) => Variant;
  readonly hands: Hands;
  readonly rules: StepRules;
}
