import type { ExerciseId, Variant } from '../../lessons/drills/types.ts';
import { decimal } from '../units.ts';
import type { KindWords, StepWords } from './kind-words.ts';
import { capital, dartsOf, EDGES, goalLine, scaleNote } from './measured.ts';
import { WORKING_DART } from './working-dart.ts';

const several = (v: Variant): boolean => v.goals.length > 1;
const both = (v: Variant): boolean => v.darts.length > 1;

const slashLine: StepWords = {
  title: 'Draw the slash line',
  text: (v, units) => [
    several(v) ? 'Draw two slash lines to the bust point.' : 'Draw one slash line to the bust point.',
    '',
    ...v.goals.map((goal) => `- ${goalLine(v, goal, units)}`),
    '',
    scaleNote(v),
  ],
};

function moveText(v: Variant): readonly string[] {
  if (v.row)
    return [
      'Cut every slash up to the bust point, and give each the same share of the dart, until nothing is left of it.',
      '',
      'Whatever the lines look like, all paper turns about the bust point.',
    ];
  return [
    several(v)
      ? 'Cut both slashes up to the bust point, and share the dart between them.'
      : `Cut the slash up to the bust point, and turn until nothing is left of the ${v.smooth === undefined ? 'old' : 'side'} dart.`,
    '',
    ...(several(v)
      ? v.goals.map(
          (goal, i) =>
            `- ${decimal(v.shares[i]! * 100, 0)} % of the angle opens at the ${EDGES[goal.place]}.`,
        )
      : []),
    ...(both(v) ? ['Close one dart after the other; both open the same slash.'] : []),
    ...(v.smooth === undefined ? [] : ['The waist dart stays open: the seam will run through it.']),
    ...(v.drill.exercise === 'angle'
      ? ['Type the angle that you read; do not ask for the legs to meet.']
      : []),
  ];
}

export const MOVE: StepWords = {
  title: 'Slash and turn',
  text: moveText,
};

const pivot: StepWords = {
  title: 'Pin, swing and trace',
  text: (v, units) => [
    'Mark where the new dart is to lie:',
    `- ${goalLine(v, v.goals[0]!, units)}`,
    '',
    'Pin the block at the bust point. Trace from the dart round to the mark, swing the block until the',
    'dart’s legs meet, and trace the rest.',
  ],
};

/** The steps that move a dart by a slash: other kinds begin with them. */
export const MOVING_STEPS = { 'working-dart': WORKING_DART, 'slash-line': slashLine, move: MOVE } as const;

const METHOD: Readonly<Partial<Record<ExerciseId, string>>> = {
  slash: 'Slash and spread.',
  pivot: 'Pin the block at the bust point, swing it, and trace it in two parts. No paper is cut.',
  angle: 'Read the angle of the dart first, and turn by the typed angle.',
  split: 'Two slashes share the dart.',
  join: 'Both darts go into one opening.',
};
const BY: Readonly<Partial<Record<ExerciseId, string>>> = { pivot: ', by the pin', angle: ', by its angle' };

export const MOVING_WORDS: KindWords = {
  title: (v) => {
    const goals = v.goals.map((goal) => EDGES[goal.place]).join(' and the ');
    return `${capital(dartsOf(v))} to the ${goals}${BY[v.drill.exercise] ?? ''}`;
  },
  method: (v) => METHOD[v.drill.exercise]!,
  steps: { ...MOVING_STEPS, pivot },
};
