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
};
