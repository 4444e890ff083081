import type { CheckSpec, Tolerance } from '../../../grading/types.ts';
import type { WorkedBy } from '../../types.ts';
import type { DrillStepId } from '../steps.ts';
import type { Band, Variant } from '../types.ts';

/** What a step of a drill is marked by, and how it is worked rightly. */
export interface Rules {
  readonly checks: readonly CheckSpec[];
  readonly worked: WorkedBy;
}

/** The rules of the steps of one kind of drill. */
export type StepRules = Readonly<Partial<Record<DrillStepId, (v: Variant) => Rules>>>;

export const BUST = 'right/bust-point';

const WIDTH: Readonly<Record<Band, number>> = { wide: 2, usual: 1, strict: 0.5 };

/** A tolerance at the drill's band; mm at full size (trade notes: 1.6 careful, 3.2 acceptable, on the seam). */
export function within(variant: Variant, value: number, reason: string): Tolerance {
  return { value: value * WIDTH[variant.drill.band], reason };
}

/** The edge on which each opening begins: one for each goal, or the same for all lines of a row. */
export const edgesOf = (v: Variant): readonly string[] =>
  v.row ? Array.from({ length: v.row.count }, () => v.goals[0]!.edge) : v.goals.map((g) => g.edge);
