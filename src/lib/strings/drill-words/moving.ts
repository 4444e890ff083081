import type { ExerciseId } from '../../lessons/drills/types.ts';
import type { OpeningWords } from './kind-words.ts';
import { capital, dartsOf, EDGES } from './measured.ts';
import { DART_TEXT, DART_TITLE } from './working-dart.ts';

/** The steps that move a dart by a slash: other kinds begin with them. */
export const MOVING_TITLES = {
  ...DART_TITLE,
  'slash-line': 'Draw the slash line',
  move: 'Slash and turn',
} as const;

const METHOD: Readonly<Partial<Record<ExerciseId, string>>> = {
  slash: 'Slash and spread.',
  pivot: 'Pin the block at the bust point, swing it, and trace it in two parts. No paper is cut.',
  angle: 'Read the angle of the dart first, and turn by the typed angle.',
  split: 'Two slashes share the dart.',
  join: 'Both darts go into one opening.',
};
const BY: Readonly<Partial<Record<ExerciseId, string>>> = { pivot: ', by the pin', angle: ', by its angle' };

export const MOVING_OPENING: OpeningWords = {
  title: (v) => {
    const goals = v.goals.map((goal) => EDGES[goal.place]).join(' and the ');
    return `${capital(dartsOf(v))} to the ${goals}${BY[v.drill.exercise] ?? ''}`;
  },
  method: (v) => METHOD[v.drill.exercise]!,
  steps: { ...MOVING_TITLES, pivot: 'Pin, swing and trace' },
  first: DART_TEXT,
};
