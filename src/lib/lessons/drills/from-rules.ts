import type { Lesson, LessonStep, StepToWork } from '../types.ts';
import type { DrillKit } from './kits/kit.ts';
import { stepSkill } from './skill.ts';
import type { DrillStepId } from './steps.ts';
import { lessonToWork, type DrillWords } from './to-work.ts';
import type { Variant } from './types.ts';

/**
 * The drill as a lesson of its own: the same steps, checks and solvers as in the course. `kit`: that of its kind. Pure. Throws
 * Error for a step that the kind does not have.
 */
export function lessonFrom(
  variant: Variant,
  { hands, rules }: Pick<DrillKit, 'hands' | 'rules'>,
  words: DrillWords,
): Lesson {
  const { given, steps, ...lesson } = lessonToWork(variant, hands, words);
  const ruled = (step: StepToWork): LessonStep => {
    const id = step.id as DrillStepId;
    const rule = rules[id];
    if (!rule) throw new Error(`the rules of the step ${id} are not at hand`);
    return { ...step, skill: stepSkill(variant, id), ...rule(variant) };
  };
  return { ...lesson, ...(given && { given: given.map(ruled) }), steps: steps.map(ruled) };
}
