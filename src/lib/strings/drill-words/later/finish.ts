import { FINISH_OPENING, FOLDS, theDart } from '../finish.ts';
import type { KindWords, StepText } from '../kind-words.ts';
import { MOVING_TEXTS } from './moving.ts';

const cap: StepText = (v) => [
  `Fold the ${theDart(v)} ${FOLDS[v.sewn!.fold]} and draw its cap.`,
  '',
  'The two legs have to be equally long first; where they are not, true them.',
  'The cap is the edge itself, reflected in the leg about which the paper is folded. So it differs with the',
  'way the dart is pressed.',
];

export const FINISH_WORDS: KindWords = { ...FINISH_OPENING, later: { ...MOVING_TEXTS, cap } };
