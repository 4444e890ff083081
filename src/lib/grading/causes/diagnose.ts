import { apply } from '../../recipe/apply.ts';
import type { Command, Work } from '../../recipe/types.ts';
import type { Cause } from '../types.ts';
import { apart, featuresOf, NEAR } from './features.ts';
import { PROCEDURES } from './procedures/index.ts';
import type { Situation } from './procedures/types.ts';

/** What the geometry says about how a step went wrong. mm. */
export type Diagnosis =
  /** The table is the right one, but for the hand's trembling. */
  | { readonly kind: 'right'; readonly distance: number }
  /** One wrong procedure makes this table; `distance` is how far its table still is from the learner's. */
  | { readonly kind: 'cause'; readonly cause: Cause; readonly distance: number }
  /** None of the known procedures makes it; `distance` is that of the nearest. */
  | { readonly kind: 'none'; readonly distance: number };

/** The table that commands make; undefined when one of them cannot be followed: nobody can have worked so. */
function followed(before: Work, commands: readonly Command[]): Work | undefined {
  let work = before;
  for (const command of commands) {
    const next = apply(work, command);
    if ('refused' in next) return undefined;
    work = next.work;
  }
  return work;
}

/** The table that commands make; one that cannot be followed is left out. */
function done(before: Work, commands: readonly Command[]): Work {
  let work = before;
  for (const command of commands) {
    const next = apply(work, command);
    if ('work' in next) work = next.work;
  }
  return work;
}

/** Whether commands can be how it went wrong: a way that is as good as the right one is not. */
export type CanBe = (commands: readonly Command[]) => Generator<undefined, boolean>;

/**
 * Holds wrong procedures, carried out from the learner's own table before the step, against the table that the learner made. `right`: the
 * step as it is worked from there. The nearest within `NEAR` that can be it names the cause; two whose tables are congruent are one cause, the first
 * of them. Pure; yields after each procedure that was tried. Commands whose phase was not fetched make `apply` throw.
 */
export function* lookForCause(
  before: Work,
  after: Work,
  own: readonly Command[],
  right: readonly Command[],
  canBe?: CanBe,
): Generator<undefined, Diagnosis> {
  const rightly = done(before, right);
  const target = featuresOf(after);
  const toRight = apart(target, featuresOf(rightly));
  // A step in which nothing was done yet has no cause, though its table may be that of one: a dart of the block is drawn to its sewn point.
  if (own.length === 0 && right.length > 0) return { kind: 'none', distance: toRight };
  if (toRight <= NEAR) return { kind: 'right', distance: toRight };
  const situation: Situation = { before, right, rightly, own, after };
  let plain: Found | undefined;
  let fitted: Found | undefined;
  for (const procedure of PROCEDURES) {
    for (const suspect of procedure(situation)) {
      const made = followed(before, suspect.commands);
      if (made === undefined) continue;
      const distance = apart(target, featuresOf(made));
      const best = suspect.fitted ? fitted : plain;
      // Only what is nearer than congruent tables are to each other takes the place of an earlier one.
      if (best !== undefined && distance >= best.distance - 1e-6) continue;
      if (distance <= NEAR && canBe && !(yield* canBe(suspect.commands))) continue;
      const found = { cause: suspect.cause, distance };
      if (suspect.fitted) fitted = found;
      else plain = found;
      yield undefined;
    }
  }
  for (const found of [plain, fitted])
    if (found !== undefined && found.distance <= NEAR) return { kind: 'cause', ...found };
  const nearest = Math.min(toRight, plain?.distance ?? Infinity, fitted?.distance ?? Infinity);
  return { kind: 'none', distance: nearest };
}

/** As `lookForCause`, in one go and with all that can be done. */
export function diagnose(
  before: Work,
  after: Work,
  own: readonly Command[],
  right: readonly Command[],
): Diagnosis {
  const search = lookForCause(before, after, own, right);
  let step = search.next();
  while (!step.done) step = search.next();
  return step.value;
}

interface Found {
  readonly cause: Cause;
  readonly distance: number;
}
