import { decimal } from '../units.ts';
import type { OpeningWords } from './kind-words.ts';
import { capital, COUNTS, dartsOf, edgeOf, measured } from './measured.ts';
import { MOVING_TITLES } from './moving.ts';
import { DART_TEXT } from './working-dart.ts';

export const FULLNESS_OPENING: OpeningWords = {
  title: (v) => `${capital(dartsOf(v))} into ${v.filled!.as} at the ${edgeOf(v)}`,
  method: () => 'Bring the angle to an edge, and leave it there without a dart.',
  ending: (v, units) => {
    const { as, tucks, reach } = v.filled!;
    const what = as === 'tucks' ? `${COUNTS[tucks]} tucks` : as;
    const share = as === 'ease' ? ` (${decimal(v.shares[0]! * 100, 0)} % of the angle)` : '';
    return `The opening at the ${edgeOf(v)} becomes ${what}${share}, drawn over ${measured(v, reach, units)} on either side.`;
  },
  steps: { ...MOVING_TITLES, 'draw-over': () => 'Draw the edge over the opening' },
  first: DART_TEXT,
};
