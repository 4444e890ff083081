import type { DrillWords } from '../../lessons/drills/from-rules.ts';
import type { DrillStepId } from '../../lessons/drills/steps.ts';
import type { Variant } from '../../lessons/drills/types.ts';
import type { RulerUnits } from '../units.ts';
import type { DrillHints } from './hints.ts';
import { goalLine } from './measured.ts';

/** The words of one step. */
export interface StepWords {
  readonly title: string | ((v: Variant) => string);
  readonly text: (v: Variant, units: RulerUnits) => readonly string[];
}

/** The words of one kind of drill, or of a few that have their steps in common. */
export interface KindWords {
  readonly title: (v: Variant) => string;
  /** What it is about, in a sentence. */
  readonly method: (v: Variant) => string;
  /** Where it is done; left out: the goals one after the other. */
  readonly where?: (v: Variant, units: RulerUnits) => readonly string[];
  /** What is made of the moved dart. */
  readonly ending?: (v: Variant, units: RulerUnits) => string;
  readonly steps: Readonly<Partial<Record<DrillStepId, StepWords>>>;
}

const goalLines = (v: Variant, units: RulerUnits): readonly string[] =>
  v.goals.map((goal) => goalLine(v, goal, units));

/** The words of drills of a kind, with lengths in the learner's units. Throws Error for a step that the kind does not have. */
export const wordsFrom = (kind: KindWords, hints: DrillHints, units: RulerUnits): DrillWords => ({
  title: kind.title,
  summary: (v) =>
    [
      kind.method(v),
      ...(kind.where ?? goalLines)(v, units),
      ...(kind.ending ? [kind.ending(v, units)] : []),
    ].join(' '),
  step: (v, id) => {
    const words = kind.steps[id];
    if (!words) throw new Error(`the words of the step ${id} are not at hand`);
    const { title, text } = words;
    return {
      title: typeof title === 'string' ? title : title(v),
      text: text(v, units),
      hints: hints[id] ?? [],
    };
  },
});
