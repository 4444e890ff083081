import type { Variant } from '../../../lessons/drills/types.ts';
import { decimal } from '../../units.ts';
import type { KindWords, StepText } from '../kind-words.ts';
import { EDGES, goalLine, scaleNote } from '../measured.ts';
import { MOVING_OPENING } from '../moving.ts';

const several = (v: Variant): boolean => v.goals.length > 1;
const both = (v: Variant): boolean => v.darts.length > 1;

const slashLine: StepText = (v, units) => [
  several(v) ? 'Draw two slash lines to the bust point.' : 'Draw one slash line to the bust point.',
  '',
  ...v.goals.map((goal) => `- ${goalLine(v, goal, units)}`),
  '',
  scaleNote(v),
];

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

const pivot: StepText = (v, units) => [
  'Mark where the new dart is to lie:',
  `- ${goalLine(v, v.goals[0]!, units)}`,
  '',
  'Pin the block at the bust point. Trace from the dart round to the mark, swing the block until the',
  'dart’s legs meet, and trace the rest.',
];

export const MOVING_TEXTS = { 'slash-line': slashLine, move: moveText } as const;

export const MOVING_WORDS: KindWords = { ...MOVING_OPENING, later: { ...MOVING_TEXTS, pivot } };
