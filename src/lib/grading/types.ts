import type { Chain, Point } from '../geometry/types.ts';
import type { Attempt, Command, Fabric, Unfollowed, Work } from '../recipe/types.ts';

export type Verdict = 'notReady' | 'needsWork' | 'accepted';

/** `missing` makes the step not ready, `wrong` makes it need work, `note` and `right` never do. */
export type FindingState = 'right' | 'wrong' | 'missing' | 'note';

/** Where on the table a finding is drawn, mm full size. */
export type Where =
  | { readonly kind: 'point'; readonly at: Point }
  | { readonly kind: 'dimension'; readonly from: Point; readonly to: Point }
  | { readonly kind: 'ghost'; readonly chain: Chain };

export interface Cause {
  /** e.g. 'pivot-slipped', 'wrong-way', 'not-closed', 'wrong-part', 'mirrored-about-other-edge', 'scale-mixed', 'drawn-to-sewn-point'. */
  readonly code: string;
  readonly amount?: number;
  readonly unit?: Unit;
}

/** Length, angle, count or area; 'text' for yes/no matters with no number. */
export type Unit = 'mm' | 'rad' | 'count' | 'mm2' | 'text';

/** One thing a check found. Numbers are signed, in mm and radians; the view turns them into the learner's units. */
export interface Finding {
  readonly check: string;
  /** Stable code `<check>/<what>`; sentences for it live in `strings`. */
  readonly code: string;
  readonly state: FindingState;
  readonly unit: Unit;
  readonly measured?: number | undefined;
  /** A value, or the closed range it should lie in. */
  readonly expected?: number | readonly [number, number] | undefined;
  readonly tolerance?: number | undefined;
  /** Code of the reason why the tolerance is that large (`strings/reasons`). */
  readonly reason?: string | undefined;
  readonly where?: Where | undefined;
  readonly cause?: Cause | undefined;
  /** Ids for the sentence: which dart, edge, notch, piece. */
  readonly about?: Readonly<Record<string, string | number>> | undefined;
}

export interface Mark {
  readonly step: string;
  readonly verdict: Verdict;
  readonly findings: readonly Finding[];
}

/** A named tolerance of a step, with the code of its reason. mm, radians. */
export interface Tolerance {
  readonly value: number;
  readonly reason: string;
}

/** One check of a step with its own numbers; lessons fill it from `step.json`. */
export interface CheckSpec {
  readonly check: string;
  readonly tolerances?: Readonly<Record<string, Tolerance>>;
  readonly numbers?: Readonly<Record<string, number>>;
  readonly names?: Readonly<Record<string, string | readonly string[]>>;
}

/** What a step is marked by. */
export interface StepRule {
  readonly id: string;
  readonly checks: readonly CheckSpec[];
}

/** The learner's own table before and after the commands of a step. */
export interface StepContext {
  readonly before: Work;
  readonly after: Work;
  readonly commands: readonly Command[];
  readonly unfollowed: readonly Unfollowed[];
  readonly fabric: Fabric;
  readonly attempt: Attempt;
}

/** A check: pure; returns its findings. */
export type Check = (context: StepContext, spec: CheckSpec) => readonly Finding[];
