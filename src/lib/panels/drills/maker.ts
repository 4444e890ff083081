import { drawOn, type Beginning } from '../../lessons/drills/begin.ts';
import type { Hands } from '../../lessons/drills/hands/hand.ts';
import type { Draw } from '../../lessons/drills/kinds/kind.ts';
import { lessonToWork } from '../../lessons/drills/to-work.ts';
import type { Variant } from '../../lessons/drills/types.ts';
import type { Lesson, LessonToWork } from '../../lessons/types.ts';
import type { Block } from '../../pattern/block.ts';
import type { DrillHints } from '../../strings/drill-words/hints.ts';
import { oneStep, wordsFrom, type OpeningWords } from '../../strings/drill-words/kind-words.ts';
import type { RulerUnits } from '../../strings/units.ts';
import type { Whole } from './whole/whole.ts';

/** A drill as it begins, and how the rest of it is fetched. */
export interface Made {
  readonly lesson: LessonToWork;
  /** Gives the lesson with what its steps are marked by. Rejects where that cannot be fetched. */
  readonly whole: () => Promise<Lesson>;
}

/** Makes the lesson of a drill on the block that it begins on, with those hints and with lengths in those units. */
export type Maker = (begun: Beginning, block: Block, hints: DrillHints, units: RulerUnits) => Made;

/** The maker of one kind of drill. */
export const makerOf =
  (
    of: (draw: Draw) => Variant,
    hands: Hands,
    words: OpeningWords,
    rest: () => Promise<{ readonly whole: Whole }>,
  ): Maker =>
  (begun, block, hints, units) => {
    const variant = of(drawOn(begun, block.front));
    const lesson = lessonToWork(variant, hands, wordsFrom(words, hints, units));
    const summary =
      variant.drill.step === undefined
        ? lesson.summary
        : `${oneStep(lesson.steps[0]!.title)} The whole of it: ${lesson.summary}`;
    return {
      lesson: { ...lesson, summary },
      whole: async () => (await rest()).whole(variant, hints, units),
    };
  };
