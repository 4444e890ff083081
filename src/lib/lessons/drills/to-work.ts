import type { HintLadder, LessonToWork, StepToWork } from '../types.ts';
import type { Hands } from './hands/hand.ts';
import { toFragment } from './link.ts';
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

/**
 * Raised for a kind when its rules change, so that an older file can be told; the files of the other kinds stay what they are. Kinds that are not
 * named here have the rules that they had at first: 1.
 */
export const DRILL_CONTENT: Readonly<Partial<Record<ExerciseId, number>>> = {
  finish: 2,
  parallel: 2,
  princess: 2,
  line: 2,
  ready: 3,
};

/** The id of a drill's lesson, as attempts and progress name it: `drill-` and its fragment with hyphens. */
export const drillId = (variant: Variant): string =>
  `drill-${toFragment(variant.drill).replaceAll('.', '-')}`;

/** A step of a drill as it is worked: its words, cut to the hints that the drill allows, and its tools. Throws Error for one that the kind does not have. */
function stepToWork(variant: Variant, id: DrillStepId, hands: Hands, words: DrillWords): StepToWork {
  const hand = hands[id];
  if (!hand) throw new Error(`no tools for step ${id}`);
  const { title, text, hints } = words.step(variant, id);
  const shown = hints.map((ladder) => ({ ...ladder, rungs: ladder.rungs.slice(0, variant.drill.hints) }));
  const { tools, cautions = [], asked } = hand;
  return {
    id,
    title,
    text,
    hints: shown.filter(({ rungs }) => rungs.length > 0),
    tools: typeof tools === 'function' ? tools(variant) : tools,
    cautions,
    ...(asked && { asked: asked(variant) }),
  };
}

/** The drill as a lesson that can be begun. `hands`: those of its kind. Pure. Throws Error for a step that the kind does not have. */
export function lessonToWork(variant: Variant, hands: Hands, words: DrillWords): LessonToWork {
  const { drill, figure, form } = variant;
  const { given, own } = stepsOf(variant);
  const made = (id: DrillStepId): StepToWork => stepToWork(variant, id, hands, words);
  return {
    id: drillId(variant),
    title: words.title(variant),
    summary: words.summary(variant),
    content: DRILL_CONTENT[drill.exercise] ?? 1,
    figure,
    form,
    fabrics: [drill.fabric],
    ...(variant.scale === 'half' && { scale: variant.scale }),
    needs: [],
    ...(given.length > 0 && { given: given.map(made) }),
    steps: own.map(made),
  };
}
