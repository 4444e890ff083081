import { decimal } from '../units.ts';
import type { KindWords, StepWords } from './kind-words.ts';
import { capital, COUNTS, dartsOf, edgeOf, measured, onPaper, paperOf } from './measured.ts';
import { MOVING_STEPS } from './moving.ts';

const MADE = {
  gathers: 'Leave the opening as gathers.',
  tucks: 'Lay the opening in tucks.',
  ease: 'Leave the opening as ease.',
} as const;

const fill: StepWords = {
  title: (v) => `Draw the ${edgeOf(v)} over`,
  text: (v, units) => {
    const { as, reach, tucks, limit } = v.filled!;
    return [
      as === 'tucks' ? `Lay the opening in ${COUNTS[tucks]} tucks.` : MADE[as],
      '',
      `Draw the cut edge of the ${edgeOf(v)} anew, smooth over the opening: ${measured(v, reach, units)} of the`,
      'old edge give way to it on either side. A notch stands at both ends.',
      '',
      ...(limit === undefined
        ? ['How much longer the new edge is than the two stretches it stands for, is the fullness.']
        : [
            `${v.drill.fabric === 'knit' ? 'A knit' : 'A stable woven cloth'} takes up ${onPaper(v, limit, units)}`,
            `(${paperOf(v)}) at most: the teacher’s setting of the course.`,
          ]),
    ];
  },
};

export const FULLNESS_WORDS: KindWords = {
  title: (v) => `${capital(dartsOf(v))} into ${v.filled!.as} at the ${edgeOf(v)}`,
  method: () => 'Bring the angle to an edge, and leave it there without a dart.',
  ending: (v, units) => {
    const { as, tucks, reach } = v.filled!;
    const what = as === 'tucks' ? `${COUNTS[tucks]} tucks` : as;
    const share = as === 'ease' ? ` (${decimal(v.shares[0]! * 100, 0)} % of the angle)` : '';
    return `The opening at the ${edgeOf(v)} becomes ${what}${share}, drawn over ${measured(v, reach, units)} on either side.`;
  },
  steps: { ...MOVING_STEPS, 'draw-over': fill },
};
