import type { HintLadder, Lesson, LessonStep } from '../types.ts';
import { toFragment } from './link.ts';
import type { StepRules } from './rules/rule.ts';
import { stepSkill } from './skill.ts';
import { stepsOf, type DrillStepId } from './steps.ts';
import type { ExerciseId, Variant } from './types.ts';

/** The words of a drill; they live with the other sentences. */
export interface DrillWords {
  readonly title: (variant: Variant) => string;
  readonly summary: (variant: Variant) => string;
  readonly step: (
    variant: Variant,
    id: DrillStepId,
  ) => { readonly title: string; readonly text: readonly string[]; readonly hints: readonly HintLadder[] };
}

/** Raised for a kind when its rules change, so that an older file can be told; the files of the other kinds stay what they are. */
export const DRILL_CONTENT: Readonly<Record<ExerciseId, number>> = {
  slash: 1,
  pivot: 1,
  angle: 1,
  split: 1,
  join: 1,
  finish: 1,
  fullness: 1,
  parallel: 1,
  several: 1,
  princess: 2,
  line: 2,
};

/** The id of a drill's lesson, as attempts and progress name it: `drill-` and its fragment with hyphens. */
export const drillId = (variant: Variant): string =>
  `drill-${toFragment(variant.drill).replaceAll('.', '-')}`;

/**
 * The drill as a lesson of its own: the same steps, checks and solvers as in the course. `rules`: those of its kind. Pure. Throws
 * Error for a step that the rules do not have.
 */
export function lessonFrom(variant: Variant, rules: StepRules, words: DrillWords): Lesson {
  const { drill, figure, form } = variant;
  const steps = stepsOf(variant).map((id): LessonStep => {
    const rule = rules[id];
    if (!rule) throw new Error(`the rules of the step ${id} are not at hand`);
    const { title, text, hints } = words.step(variant, id);
    const shown = hints.map((ladder) => ({ ...ladder, rungs: ladder.rungs.slice(0, drill.hints) }));
    const ladders = shown.filter(({ rungs }) => rungs.length > 0);
    const skill = stepSkill(variant, id);
    return { id, title, text, hints: ladders, skill, ...rule(variant) };
  });
  return {
    id: drillId(variant),
    title: words.title(variant),
    summary: words.summary(variant),
    content: DRILL_CONTENT[drill.exercise],
    figure,
    form,
    fabrics: [drill.fabric],
    ...(variant.scale === 'half' && { scale: variant.scale }),
    needs: [],
    steps,
  };
}
