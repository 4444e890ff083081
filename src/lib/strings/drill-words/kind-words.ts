import type { DrillStepId } from '../../lessons/drills/steps.ts';
import type { DrillWords } from '../../lessons/drills/to-work.ts';
import type { Variant } from '../../lessons/drills/types.ts';
import type { RulerUnits } from '../units.ts';
import type { DrillHints } from './hints.ts';
import { goalLine } from './measured.ts';

/** The text of one step. */
export type StepText = (v: Variant, units: RulerUnits) => readonly string[];
export type StepTexts = Readonly<Partial<Record<DrillStepId, StepText>>>;

/** The words with which one kind of drill begins, or a few that have their steps in common. */
export interface OpeningWords {
  readonly title: (v: Variant) => string;
  /** What it is about, in a sentence. */
  readonly method: (v: Variant) => string;
  /** Where it is done; left out: the goals one after the other. */
  readonly where?: (v: Variant, units: RulerUnits) => readonly string[];
  /** What is made of the moved dart. */
  readonly ending?: (v: Variant, units: RulerUnits) => string;
  /** The titles of all its steps. */
  readonly steps: Readonly<Partial<Record<DrillStepId, string | ((v: Variant) => string)>>>;
  /** The texts of the steps that it may begin with. */
  readonly first: StepTexts;
}

/** All words of a kind. */
export interface KindWords extends OpeningWords {
  /** The texts of its other steps. */
  readonly later: StepTexts;
  /** What one step of it asks that is worked by itself, and what is done before it; left out: what the whole is about. */
  readonly alone?: (v: Variant, units: RulerUnits, id: DrillStepId) => string;
}

/** Of a drill of one step, which. */
export const oneStep = (title: string): string =>
  `One step, and no more: ${title.charAt(0).toLowerCase()}${title.slice(1)}.`;

const goalLines = (v: Variant, units: RulerUnits): readonly string[] =>
  v.goals.map((goal) => goalLine(v, goal, units));

/**
 * The words of drills of a kind, with lengths in the learner's units. Of opening words only the steps that a drill may begin with have their text
 * and hints. Throws Error for a step that the kind does not have.
 */
export const wordsFrom = (
  kind: OpeningWords | KindWords,
  hints: DrillHints,
  units: RulerUnits,
): DrillWords => ({
  title: kind.title,
  summary: (v) =>
    [
      kind.method(v),
      ...(kind.where ?? goalLines)(v, units),
      ...(kind.ending ? [kind.ending(v, units)] : []),
    ].join(' '),
  step: (v, id) => {
    const title = kind.steps[id];
    const later = 'later' in kind;
    const text = kind.first[id] ?? (later ? kind.later[id] : () => []);
    if (!title || !text) throw new Error(`no words for step ${id}`);
    return {
      title: typeof title === 'string' ? title : title(v),
      text: text(v, units),
      hints: hints[id] ?? [],
    };
  },
});
