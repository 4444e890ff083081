import type { OpeningWords, StepText } from './kind-words.ts';
import type { Goal, Variant } from '../../lessons/drills/types.ts';
import type { RulerUnits } from '../units.ts';
import { capital, dartsOf, EDGES, from, measured, onPaper, scaleNote } from './measured.ts';
import { DART_TITLE } from './working-dart.ts';

/** Where a style line begins and ends, and how near it passes. */
function lineLines(v: Variant, units: RulerUnits): readonly string[] {
  const { end, least, most } = v.line!;
  const place = (goal: Goal): string => `${measured(v, goal.mm, units)} ${from(goal)}`;
  return [
    `It begins on the ${EDGES[v.goals[0]!.place]}, ${place(v.goals[0]!)}.`,
    `It ends on the ${EDGES[end.place]}, ${place(end)}.`,
    `It passes the bust point on the side of centre front, ${onPaper(v, least, units)} to ${measured(v, most, units)} from it.`,
  ];
}

const styleLine: StepText = (v, units) => [
  'Draw one smooth style line.',
  '',
  ...lineLines(v, units).map((line) => `- ${line}`),
  '',
  'From the place nearest to the bust point up to the shoulder it moves away steadily.',
  scaleNote(v),
];

export const LINE_OPENING: OpeningWords = {
  title: (v) => `${capital(dartsOf(v))} into a line beside the bust point`,
  method: () => 'A style line passes beside the bust point, and the dart goes into it by a connector.',
  where: lineLines,
  ending: (v) =>
    v.drill.fabric === 'knit'
      ? 'The leftover is eased into the seam.'
      : 'The leftover is taken out at the shoulder, where the cloth does not ease it.',
  steps: {
    'style-line': 'Draw the style line',
    notches: 'Mark the notches',
    ...DART_TITLE,
    connector: 'Draw the connector',
    'move-along': 'Move the dart into the line',
    separate: 'Cut the pieces apart',
    leftover: 'Decide on the leftover',
  },
  first: { 'style-line': styleLine },
};
