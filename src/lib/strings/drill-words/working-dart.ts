import type { StepText } from './kind-words.ts';
import { dartsOf } from './measured.ts';

/** Most kinds begin with the working dart. */
export const DART_TITLE = { 'working-dart': 'Draw the working dart' } as const;

export const workingDart: StepText = (v) => {
  const darts = v.smooth === undefined ? dartsOf(v) : 'side dart and the waist dart';
  return [
    `Draw the ${darts} up to the bust point, both legs.`,
    '',
    'A dart is moved by the bust point, never by the point it is sewn to.',
  ];
};

export const DART_TEXT = { 'working-dart': workingDart } as const;
