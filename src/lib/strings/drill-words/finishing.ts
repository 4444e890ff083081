import type { Fold } from '../../pattern/types.ts';
import type { Variant } from '../../lessons/drills/types.ts';
import { decimal, type Units } from '../units.ts';
import { dartsOf, edgeOf, measured, middleLine, onPaper, paperOf, scaleNote } from './measured.ts';

export const FOLDS: Readonly<Record<Fold, string>> = {
  centre: 'towards centre front',
  side: 'towards the side',
  up: 'up',
  down: 'down',
};
export const COUNTS = ['no', 'one', 'two', 'three', 'four', 'five'] as const;

/** The dart that is finished: the block's own, or the new one. */
const theDart = (v: Variant): string => (v.goals.length > 0 ? `new dart at the ${edgeOf(v)}` : dartsOf(v));

/** The lines of a row, before anything is cut. */
export function linesText(v: Variant, units: Units): readonly string[] {
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
}

export function sewnPointText(v: Variant, units: Units): readonly string[] {
  if (!v.row)
    return [
      `Draw the ${theDart(v)} to its sewn point: ${measured(v, v.sewn!.off, units)} short of the bust point, on`,
      'the middle of the dart.',
      '',
      'The legs are drawn anew from there to their old ends. The intake at the edge stays as it is.',
    ];
  const { off, step, radius } = v.row;
  const from = radius === undefined ? 'the bust point' : 'the middle between its two pivots';
  return [
    step === 0
      ? `Back each dart off by the same ${measured(v, off, units)}, counted from ${from}.`
      : `Let the sewn points stand in a slanting row: the first ${measured(v, off, units)} from ${from},`,
    ...(step === 0 ? [] : [`and each next one ${onPaper(v, step, units)} further back than its neighbour.`]),
    '',
    'Every point lies on the middle of its own dart.',
  ];
}

export const trueLegsText: readonly string[] = [
  'Measure the two legs of each dart. They are sewn to each other, and they differ by some millimetres: the',
  'sewn point does not lie in the bust point, about which the paper was turned.',
  '',
  'True them: both legs become as long as their mean, and the edge beside them runs to their new ends.',
];

export const capText = (v: Variant): readonly string[] => [
  `Fold the ${theDart(v)} ${FOLDS[v.sewn!.fold]} and draw its cap.`,
  '',
  'The two legs have to be equally long first; where they are not, true them.',
  'The cap is the edge itself, reflected in the leg about which the paper is folded. So it differs with the',
  'way the dart is pressed.',
];

const MADE = {
  gathers: 'Leave the opening as gathers.',
  tucks: 'Lay the opening in tucks.',
  ease: 'Leave the opening as ease.',
} as const;

export function fillText(v: Variant, units: Units): readonly string[] {
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
}

export const partText = (v: Variant): readonly string[] => [
  `Cut the front apart: along the dart at the ${edgeOf(v)} to the bust point, and along the waist dart to the`,
  'waist.',
  '',
  'The legs of the two darts are now the edges of two pieces. Walked from end to end, they have to be',
  'equally long above the bust point and below it.',
];

export const smoothText = (v: Variant, units: Units): readonly string[] => [
  `Smooth the seam at the bust point on both pieces: ${measured(v, v.smooth!, units)} above it and as much`,
  'below it.',
  '',
  'The sharper edge loses a little more than the flat one. Up to an eighth of an inch of that is eased.',
];

/** One line of the exercise: what is made of the moved dart. */
export function finishLine(v: Variant, units: Units): string {
  if (v.filled) {
    const { as, tucks, reach } = v.filled;
    const what = as === 'tucks' ? `${COUNTS[tucks]} tucks` : as;
    const share = as === 'ease' ? ` (${decimal(v.shares[0]! * 100, 0)} % of the angle)` : '';
    return `The opening at the ${edgeOf(v)} becomes ${what}${share}, drawn over ${measured(v, reach, units)} on either side.`;
  }
  if (v.sewn)
    return `The ${theDart(v)} is backed off by ${measured(v, v.sewn.off, units)} and capped, folded ${FOLDS[v.sewn.fold]}.`;
  if (v.smooth !== undefined)
    return `The seam is smoothed ${measured(v, v.smooth, units)} above and below the bust point.`;
  return '';
}
