import type { StepWords } from './kind-words.ts';
import { dartsOf } from './measured.ts';

export const WORKING_DART: StepWords = {
  title: 'Draw the working dart',
  text: (v) => {
    const darts = v.smooth === undefined ? dartsOf(v) : 'side dart and the waist dart';
    return [
      `Draw the ${darts} up to the bust point, both legs.`,
      '',
      'A dart is moved by the bust point, never by the point it is sewn to.',
    ];
  },
  hints: [
    {
      codes: ['darts-extended/tip'],
      rungs: [
        'Where do the legs meet: at the bust point, or short of it?',
        'The bust point is the small cross; the sewn dart stops before it.',
        'Take the tool for the working dart and place the tip on the bust point.',
      ],
    },
  ],
};
