import type { DrillStepId, DrillWords } from '../lessons/drills/lesson.ts';
import type { Goal, Variant } from '../lessons/drills/types.ts';
import type { HintLadder } from '../lessons/types.ts';
import { decimal, formatLength, type Units } from './units.ts';

const EDGES: Readonly<Record<Goal['place'], string>> = {
  side: 'side seam',
  shoulder: 'shoulder seam',
  neckline: 'neckline',
  armhole: 'armhole',
  'centre-front': 'centre front',
  waist: 'waist',
};

const FROM: Readonly<Record<Goal['place'], string>> = {
  side: 'below the underarm',
  shoulder: 'from the neck point',
  neckline: 'from the neck point',
  armhole: 'from the shoulder point, along the curve',
  'centre-front': 'below the neckline',
  waist: 'from centre front',
};

const dartName = (id: string): string => (id === 'right/waist-dart' ? 'waist dart' : 'side dart');
const dartsOf = (v: Variant): string => v.darts.map(dartName).join(' and the ');
const several = (v: Variant): boolean => v.goals.length > 1;
const both = (v: Variant): boolean => v.darts.length > 1;

/** The length to measure on the paper in front of the learner, and which paper that is. */
function measured(v: Variant, mm: number, units: Units): string {
  const half = v.scale === 'half';
  return `${formatLength(half ? mm / 2 : mm, units)} (measured at ${half ? 'half scale' : 'full size'})`;
}

const goalLine = (v: Variant, goal: Goal, units: Units): string =>
  `On the ${EDGES[goal.place]}: ${measured(v, goal.mm, units)} ${FROM[goal.place]}.`;

function title(v: Variant): string {
  const goals = v.goals.map((goal) => EDGES[goal.place]);
  const method =
    v.drill.exercise === 'pivot' ? ', by the pin' : v.drill.exercise === 'angle' ? ', by its angle' : '';
  const what = dartsOf(v);
  return `${what.slice(0, 1).toUpperCase()}${what.slice(1)} to the ${goals.join(' and the ')}${method}`;
}

const METHOD: Readonly<Record<Variant['drill']['exercise'], string>> = {
  slash: 'Slash and spread.',
  pivot: 'Pin the block at the bust point, swing it, and trace it in two parts. No paper is cut.',
  angle: 'Read the angle of the dart first, and turn by the typed angle.',
  split: 'Two slashes share the dart.',
  join: 'Both darts go into one opening.',
};

function stepText(v: Variant, id: DrillStepId, units: Units): readonly string[] {
  switch (id) {
    case 'working-dart':
      return [
        `Draw the ${dartsOf(v)} up to the bust point, both legs.`,
        '',
        'A dart is moved by the bust point, never by the point it is sewn to.',
      ];
    case 'slash-line':
      return [
        several(v) ? 'Draw two slash lines to the bust point.' : 'Draw one slash line to the bust point.',
        '',
        ...v.goals.map((goal) => `- ${goalLine(v, goal, units)}`),
        '',
        v.scale === 'half'
          ? 'The lengths are those of half-scale paper; the table shows full size if you ask it to.'
          : 'The lengths are those of full-size paper, though what lies on the table is half scale.',
      ];
    case 'move':
      return [
        several(v)
          ? 'Cut both slashes up to the bust point, and share the dart between them.'
          : 'Cut the slash up to the bust point, and turn until nothing is left of the old dart.',
        '',
        ...(several(v)
          ? v.goals.map(
              (goal, i) =>
                `- ${decimal(v.shares[i]! * 100, 0)} % of the angle opens at the ${EDGES[goal.place]}.`,
            )
          : []),
        ...(both(v) ? ['Close one dart after the other; both open the same slash.'] : []),
        ...(v.drill.exercise === 'angle'
          ? ['Type the angle that you read; do not ask for the legs to meet.']
          : []),
      ];
    case 'pivot':
      return [
        'Mark where the new dart is to lie:',
        `- ${goalLine(v, v.goals[0]!, units)}`,
        '',
        'Pin the block at the bust point. Trace from the dart round to the mark, swing the block until the',
        'dart’s legs meet, and trace the rest.',
      ];
  }
}

const LADDERS: Readonly<Record<DrillStepId, readonly HintLadder[]>> = {
  'working-dart': [
    {
      codes: ['darts-extended/tip'],
      rungs: [
        'Where do the legs meet: at the bust point, or short of it?',
        'The bust point is the small cross; the sewn dart stops before it.',
        'Take the tool for the working dart and place the tip on the bust point.',
      ],
    },
  ],
  'slash-line': [
    {
      codes: [],
      rungs: [
        'Compare both ends of your line with what is asked: which one is off?',
        'It begins at the given length on the given edge and ends in the bust point. Mind the scale of the length.',
        'Type the length along the edge in the form under the table, and let the end snap to the bust point.',
      ],
    },
  ],
  move: [
    {
      codes: [],
      rungs: [
        'Look at the old dart, then at the opening: which of them is not as asked?',
        'Cut to the bust point, not through it, and turn about the bust point only.',
        'Turn the freed part about the bust point, by intent where you can: until the legs meet, or by a share.',
      ],
    },
  ],
  pivot: [
    {
      codes: [],
      rungs: [
        'Where was the pin, and which way did the block swing?',
        'The pin stands in the bust point, and the block swings so that the old dart closes.',
        'Place the mark at the given length, pin the bust point, and swing until the legs meet.',
      ],
    },
  ],
};

const TITLES: Readonly<Record<DrillStepId, string>> = {
  'working-dart': 'Draw the working dart',
  'slash-line': 'Draw the slash line',
  move: 'Slash and turn',
  pivot: 'Pin, swing and trace',
};

/** The words of drills, with lengths in the learner's units. */
export const drillWords = (units: Units): DrillWords => ({
  title,
  summary: (v) => `${METHOD[v.drill.exercise]} ${v.goals.map((goal) => goalLine(v, goal, units)).join(' ')}`,
  step: (v, id) => ({ title: TITLES[id], text: stepText(v, id, units), hints: LADDERS[id] }),
});
