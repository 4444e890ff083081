import type { OpeningWords } from './kind-words.ts';
import { edgeOf, measured } from './measured.ts';
import { MOVING_TITLES } from './moving.ts';
import { DART_TEXT } from './working-dart.ts';

export const PRINCESS_OPENING: OpeningWords = {
  title: (v) => `Princess seam from the ${edgeOf(v)}`,
  method: () => 'The darts vanish in a seam over the bust point.',
  ending: (v, units) =>
    `The seam is smoothed ${measured(v, v.smooth!, units)} above and below the bust point.`,
  steps: {
    ...MOVING_TITLES,
    'cut-apart': 'Cut it apart',
    smooth: 'Smooth the seam',
    'seam-notches': 'Mark the notches',
  },
  first: DART_TEXT,
};
