import { lookForCause } from '../../grading/causes/diagnose.ts';
import type { Cause, Mark } from '../../grading/types.ts';
import type { StepReplay } from '../../recipe/replay.ts';
import type { Attempt } from '../../recipe/types.ts';
import type { LessonStep } from '../types.ts';
import { workedStep } from '../worked/index.ts';
import { isDetermined, markOf, onlyFree, ownRightWay, type Marking } from './right-way.ts';

/** What can be said of how a step went wrong, beyond its findings. */
export type StepCause =
  | { readonly kind: 'cause'; readonly cause: Cause }
  /** None of the known ways of going wrong makes this table. */
  | { readonly kind: 'none' }
  /** Nothing: nothing is known, the findings say it already, or there is no one right table that it could be held against. */
  | { readonly kind: 'silent' };

const SILENT: StepCause = { kind: 'silent' };

/** What is wrong in a mark, by code. */
const wrongIn = ({ findings }: Mark): ReadonlySet<string> =>
  new Set(findings.filter(({ state }) => state === 'wrong').map(({ code }) => code));

/** The causes that the findings of a mark name themselves. */
export const toldBy = ({ findings }: Mark): ReadonlySet<string> =>
  new Set(findings.flatMap(({ state, cause }) => (state === 'wrong' && cause ? [cause.code] : [])));

/**
 * Looks for the cause of a step that needs work, from the learner's own table and by what the learner chose rightly. A wrong procedure is
 * named only when its own table is refused for something that the learner's is refused for, too, and not for a number that may be
 * another. Yields often, so that it can be run in slices. Throws as `gradeStep`.
 */
export function* lookForStepCause(
  step: LessonStep,
  replayed: StepReplay,
  mark: Mark,
  attempt: Attempt,
): Generator<undefined, StepCause> {
  // One cause at a time: where the findings name one, another could only say the same again, or contradict it.
  if (mark.verdict !== 'needsWork' || toldBy(mark).size > 0) return SILENT;
  const { before, after } = replayed;
  const refused = new Set(replayed.unfollowed.map(({ command }) => command));
  const own = replayed.commands.filter((command) => !refused.has(command));
  const marking: Marking = { step, before, attempt };
  const worked = workedStep(step, before, attempt.fabric);
  if (worked.length === 0) return SILENT;
  const right = yield* ownRightWay(marking, own, worked);
  const wrong = wrongIn(mark);
  const found = yield* lookForCause(before, after, own, right, function* (commands) {
    const theirs = markOf(marking, commands);
    if (theirs === undefined || theirs.verdict === 'accepted') return false;
    if (![...wrongIn(theirs)].some((code) => wrong.has(code))) return false;
    return !(yield* onlyFree(marking, right, commands));
  });
  if (found.kind === 'cause') return { kind: 'cause', cause: found.cause };
  if (found.kind === 'right') return SILENT;
  return (yield* isDetermined(marking, right)) ? { kind: 'none' } : SILENT;
}

/** As `lookForStepCause`, in one go. */
export function stepCause(step: LessonStep, replayed: StepReplay, mark: Mark, attempt: Attempt): StepCause {
  const search = lookForStepCause(step, replayed, mark, attempt);
  let next = search.next();
  while (!next.done) next = search.next();
  return next.value;
}
