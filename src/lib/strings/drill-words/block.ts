import { stepsOf } from '../../lessons/drills/steps.ts';
import { nameOf } from '../names.ts';
import type { OpeningWords, StepText, StepTexts } from './kind-words.ts';
import { dartsOf, paperOf } from './measured.ts';

/** Of the dart that is meant, where the block may have two. */
const OF_DART: Readonly<Record<string, string>> = {
  'sewn-point': 'sewn point of the side dart',
  'waist-sewn-point': 'sewn point of the waist dart',
  'dart-upper': 'upper leg of the side dart',
  'dart-lower': 'lower leg of the side dart',
  'waist-dart-centre': 'inner leg of the waist dart, towards centre front',
  'waist-dart-side': 'outer leg of the waist dart, towards the side',
};
/** What is to be pointed out, with its article. */
const thing = (what: string): string =>
  what === 'centre-front' ? 'centre front' : `the ${OF_DART[what] ?? nameOf(what)}`;

const find: StepText = (v) => [
  'The front of a fitted block lies on the table: the wearer’s right half, seen from outside. Left and',
  'right are always the wearer’s. Point out:',
  '',
  ...v.toFind!.map((what) => `- ${thing(what)}`),
  '',
  'What you point at is named above the table. Point at an edge between its ends: a corner belongs to two.',
];

/** What is done in each of its steps. */
const DONE: StepTexts = {
  find: (v) => {
    const things = v.toFind!.map(thing);
    return [`Point out ${things.slice(0, -1).join('; ')}; and ${things.at(-1)}.`];
  },
  read: (v) => [`Read the angle, the leg length and the intake of the ${dartsOf(v)}, ${paperOf(v)}.`],
  'open-out': () => ['Open the front out.'],
};

export const BLOCK_OPENING: OpeningWords = {
  title: (v) => `Find your way on the block: the ${dartsOf(v)}`,
  method: () => 'Everything begins with the block.',
  where: (v, units) => stepsOf(v).own.flatMap((id) => DONE[id]!(v, units)),
  steps: {
    find: 'Find your way on the block',
    read: 'Read angle, leg and intake',
    'open-out': 'Open out the front',
  },
  first: { find },
};
