import type { KindWords, StepWords } from './kind-words.ts';
import { capital, COUNTS, dartsOf, edgeOf, measured, middleLine, onPaper, scaleNote } from './measured.ts';
import { MOVE } from './moving.ts';
import { WORKING_DART } from './working-dart.ts';

const lines: StepWords = {
  title: 'Draw the lines',
  text: (v, units) => {
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
  },
};

const sewnPoints: StepWords = {
  title: 'Draw the sewn points',
  text: (v, units) => {
    const { off, step, radius } = v.row!;
    const from = radius === undefined ? 'the bust point' : 'the middle between its two pivots';
    return [
      step === 0
        ? `Back each dart off by the same ${measured(v, off, units)}, counted from ${from}.`
        : `Let the sewn points stand in a slanting row: the first ${measured(v, off, units)} from ${from},`,
      ...(step === 0
        ? []
        : [`and each next one ${onPaper(v, step, units)} further back than its neighbour.`]),
      '',
      'Every point lies on the middle of its own dart.',
    ];
  },
};

const trueLegs: StepWords = {
  title: 'True the legs',
  text: () => [
    'Measure the two legs of each dart. They are sewn to each other, and they differ by some millimetres: the',
    'sewn point does not lie in the bust point, about which the paper was turned.',
    '',
    'True them: both legs become as long as their mean, and the edge beside them runs to their new ends.',
  ],
};

export const ROW_WORDS: KindWords = {
  title: (v) => {
    const { count, step } = v.row!;
    const several = v.goals[0]!.place === 'neckline' ? 'rays' : step > 0 ? 'graduated darts' : 'darts';
    const group = v.drill.exercise === 'parallel' ? 'parallel darts' : several;
    return `${capital(dartsOf(v))} into ${COUNTS[count]} ${group} at the ${edgeOf(v)}`;
  },
  method: (v) =>
    v.drill.exercise === 'parallel'
      ? 'Two darts side by side, each over an alternate pivot.'
      : 'A group of darts shares the angle.',
  where: (v, units) => [middleLine(v, units), `From line to line: ${measured(v, v.row!.spacing, units)}.`],
  steps: {
    'working-dart': WORKING_DART,
    lines,
    move: MOVE,
    'sewn-point': sewnPoints,
    'true-legs': trueLegs,
  },
};
