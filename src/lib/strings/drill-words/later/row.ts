import type { KindWords, StepText } from '../kind-words.ts';
import { COUNTS, edgeOf, measured, onPaper, scaleNote } from '../measured.ts';
import { middleLine, ROW_OPENING } from '../row.ts';
import { MOVING_TEXTS } from './moving.ts';

const lines: StepText = (v, units) => {
  const { count, spacing, radius } = v.row!;
  return [
    `Draw ${COUNTS[count]} slash lines from the ${edgeOf(v)} to the bust point.`,
    '',
    `- ${middleLine(v, units)}`,
    `- From each line to the next, along the edge: ${onPaper(v, spacing, units)}.`,
    ...(radius === undefined
      ? ['- They run straight and come together in the bust point.']
      : [
          '- They run parallel, each to an alternate pivot, and bend there to the bust point.',
          `- Each pivot lies ${onPaper(v, 19, units)} to ${onPaper(v, 25.4, units)} from the bust point.`,
        ]),
    '',
    scaleNote(v),
  ];
};

const sewnPoints: StepText = (v, units) => {
  const { off, step, radius } = v.row!;
  const from = radius === undefined ? 'the bust point' : 'the middle between its two pivots';
  return [
    step === 0
      ? `Back each dart off by the same ${measured(v, off, units)}, counted from ${from}.`
      : `Let the sewn points stand in a slanting row: the first ${measured(v, off, units)} from ${from},`,
    ...(step === 0 ? [] : [`and each next one ${onPaper(v, step, units)} further back than its neighbour.`]),
    '',
    'Every point lies on the middle of its own dart.',
  ];
};

const trueLegs: StepText = () => [
  'Measure the two legs of each dart. They are sewn to each other, and they differ by some millimetres: the',
  'sewn point does not lie in the bust point, about which the paper was turned.',
  '',
  'True them: both legs become as long as their mean, and the edge beside them runs to their new ends.',
];

export const ROW_WORDS: KindWords = {
  ...ROW_OPENING,
  later: { lines, move: MOVING_TEXTS.move, 'sewn-point': sewnPoints, 'true-legs': trueLegs },
};
