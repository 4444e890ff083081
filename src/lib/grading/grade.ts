import { idsOf, replayByStep, type StepReplay } from '../recipe/replay.ts';
import type { Attempt } from '../recipe/types.ts';
import { CHECKS } from './checks/index.ts';
import type { Finding, Mark, StepContext, StepRule, Verdict } from './types.ts';

/**
 * Unfinished is not wrong: what is missing goes before what is off. Nothing done is never accepted: a step that shows nothing
 * right has not begun. (Work that belongs to this step but was done in an earlier one counts: the outcome is marked.)
 */
export function verdictOf(findings: readonly Finding[]): Verdict {
  let right = false;
  let wrong = false;
  for (const { state } of findings) {
    if (state === 'missing') return 'notReady';
    if (state === 'wrong') wrong = true;
    else if (state === 'right') right = true;
  }
  return wrong ? 'needsWork' : right ? 'accepted' : 'notReady';
}

/**
 * Marks one step: pure, from the learner's own table before and after it. Throws RangeError when the rule names a check that does
 * not exist or leaves out a number one needs: a fault of the lesson.
 */
export function gradeStep(rule: StepRule, context: StepContext): Mark {
  const findings: Finding[] = [];
  for (const spec of rule.checks) {
    const check = CHECKS.get(spec.check);
    if (!check) throw new RangeError(`there is no check '${spec.check}'`);
    for (const finding of check(context, spec)) findings.push(finding);
  }
  return { step: rule.id, verdict: verdictOf(findings), findings };
}

const contextOf = (step: StepReplay, attempt: Attempt): StepContext => ({
  before: step.before,
  after: step.after,
  commands: step.commands,
  unfollowed: step.unfollowed,
  fabric: attempt.fabric,
  attempt,
});

/** What is marked: `steps`; those that are `given` are only replayed before them. */
export interface Marked {
  readonly given?: readonly StepRule[];
  readonly steps: readonly StepRule[];
}

/** Marks all steps in one replay. Throws as `gradeStep`. */
export function gradeLesson(lesson: Marked, attempt: Attempt): Mark[] {
  const steps = replayByStep(attempt, idsOf(lesson));
  return lesson.steps.map((rule) => gradeStep(rule, contextOf(steps.get(rule.id)!, attempt)));
}

/** Marks one step of an attempt. Throws as `gradeStep`; RangeError for an unknown step. */
export function gradeOne(lesson: Marked, stepId: string, attempt: Attempt): Mark {
  const at = lesson.steps.findIndex((step) => step.id === stepId);
  const rule = lesson.steps[at];
  if (!rule) throw new RangeError(`the lesson has no step '${stepId}'`);
  const steps = replayByStep(attempt, idsOf(lesson));
  return gradeStep(rule, contextOf(steps.get(stepId)!, attempt));
}
