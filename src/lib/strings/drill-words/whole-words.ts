import { stepsOf } from '../../lessons/drills/steps.ts';
import type { DrillWords } from '../../lessons/drills/to-work.ts';
import type { RulerUnits } from '../units.ts';
import type { DrillHints } from './hints.ts';
import { oneStep, wordsFrom, type KindWords } from './kind-words.ts';

/** The words of whole drills of a kind, as `wordsFrom` gives them; a drill of one step says which. */
export function wholeWords(kind: KindWords, hints: DrillHints, units: RulerUnits): DrillWords {
  const words = wordsFrom(kind, hints, units);
  return {
    ...words,
    summary: (v) => {
      if (v.drill.step === undefined) return words.summary(v);
      const { given, own } = stepsOf(v);
      const id = own[0]!;
      const { title } = words.step(v, id);
      return [
        oneStep(title),
        ...(kind.alone
          ? [kind.alone(v, units, id)]
          : [
              ...(given.length > 0 ? ['What comes before it is done.'] : []),
              `The whole of it: ${words.summary(v)}`,
            ]),
      ].join(' ');
    },
  };
}
