import type { Fold } from '../../pattern/types.ts';
import type { Variant } from '../../lessons/drills/types.ts';
import type { KindWords, StepWords } from './kind-words.ts';
import { capital, dartsOf, edgeOf, measured } from './measured.ts';
import { MOVING_STEPS } from './moving.ts';

const FOLDS: Readonly<Record<Fold, string>> = {
  centre: 'towards centre front',
  side: 'towards the side',
  up: 'up',
  down: 'down',
};

/** The dart that is finished: the block's own, or the new one. */
const theDart = (v: Variant): string => (v.goals.length > 0 ? `new dart at the ${edgeOf(v)}` : dartsOf(v));

const sewnPoint: StepWords = {
  title: 'Draw the sewn point',
  text: (v, units) => [
    `Draw the ${theDart(v)} to its sewn point: ${measured(v, v.sewn!.off, units)} short of the bust point, on`,
    'the middle of the dart.',
    '',
    'The legs are drawn anew from there to their old ends. The intake at the edge stays as it is.',
  ],
};

const cap: StepWords = {
  title: 'Cap the dart',
  text: (v) => [
    `Fold the ${theDart(v)} ${FOLDS[v.sewn!.fold]} and draw its cap.`,
    '',
    'The two legs have to be equally long first; where they are not, true them.',
    'The cap is the edge itself, reflected in the leg about which the paper is folded. So it differs with the',
    'way the dart is pressed.',
  ],
};

export const FINISH_WORDS: KindWords = {
  title: (v) => {
    const what = capital(dartsOf(v));
    return v.goals.length === 0 ? `${what}, backed off and capped` : `${what} to the ${edgeOf(v)}, capped`;
  },
  method: () => 'Back the dart off and draw its cap.',
  ending: (v, units) =>
    `The ${theDart(v)} is backed off by ${measured(v, v.sewn!.off, units)} and capped, folded ${FOLDS[v.sewn!.fold]}.`,
  steps: { ...MOVING_STEPS, 'sewn-point': sewnPoint, cap },
};
