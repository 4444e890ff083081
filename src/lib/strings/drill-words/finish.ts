import type { Fold } from '../../pattern/types.ts';
import type { Variant } from '../../lessons/drills/types.ts';
import type { OpeningWords, StepText } from './kind-words.ts';
import { capital, dartsOf, edgeOf, measured } from './measured.ts';
import { MOVING_TITLES } from './moving.ts';
import { DART_TEXT } from './working-dart.ts';

export const FOLDS: Readonly<Record<Fold, string>> = {
  centre: 'towards centre front',
  side: 'towards the side',
  up: 'up',
  down: 'down',
};

/** The dart that is finished: the block's own, or the new one. */
export const theDart = (v: Variant): string =>
  v.goals.length > 0 ? `new dart at the ${edgeOf(v)}` : dartsOf(v);

const sewnPoint: StepText = (v, units) => [
  `Draw the ${theDart(v)} to its sewn point: ${measured(v, v.sewn!.off, units)} short of the bust point, on`,
  'the middle of the dart.',
  '',
  'The legs are drawn anew from there to their old ends. The intake at the edge stays as it is.',
];

export const FINISH_OPENING: OpeningWords = {
  title: (v) => {
    const what = capital(dartsOf(v));
    return v.goals.length === 0 ? `${what}, backed off and capped` : `${what} to the ${edgeOf(v)}, capped`;
  },
  method: () => 'Back the dart off and draw its cap.',
  ending: (v, units) =>
    `The ${theDart(v)} is backed off by ${measured(v, v.sewn!.off, units)} and capped, folded ${FOLDS[v.sewn!.fold]}.`,
  steps: { ...MOVING_TITLES, 'sewn-point': 'Draw the sewn point', cap: 'Cap the dart' },
  first: { ...DART_TEXT, 'sewn-point': sewnPoint },
};
