import { stepsOf } from '../../lessons/drills/steps.ts';
import type { DrillWords } from '../../lessons/drills/to-work.ts';
import type { RulerUnits } from '../units.ts';
import type { DrillHints } from './hints.ts';
import { wordsFrom, type KindWords } from './kind-words.ts';

const ONE_STEP = 'One step, and no more: what comes before it is done.';

/** The words of whole drills of a kind, as `wordsFrom` gives them; a drill of one step is called by that. */
export function wholeWords(kind: KindWords, hints: DrillHints, units: RulerUnits): DrillWords {
  const words = wordsFrom(kind, hints, units);
  return {
    ...words,
    title: (v) => (v.drill.step === undefined ? words.title(v) : words.step(v, stepsOf(v).own[0]!).title),
    summary: (v) => (v.drill.step === undefined ? '' : `${ONE_STEP} `) + words.summary(v),
  };
}
