import { FULLNESS_OPENING } from '../fullness.ts';
import type { KindWords, StepText } from '../kind-words.ts';
import { COUNTS, edgeOf, measured, onPaper, paperOf } from '../measured.ts';
import { MOVING_TEXTS } from './moving.ts';

const MADE = {
  gathers: 'Leave the opening as gathers.',
  tucks: 'Lay the opening in tucks.',
  ease: 'Leave the opening as ease.',
} as const;

const fill: StepText = (v, units) => {
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
};

export const FULLNESS_WORDS: KindWords = {
  ...FULLNESS_OPENING,
  later: { ...MOVING_TEXTS, 'draw-over': fill },
};
