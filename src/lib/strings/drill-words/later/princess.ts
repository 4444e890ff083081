import { BESIDE } from '../../../lessons/drills/rules/princess.ts';
import type { KindWords, StepText } from '../kind-words.ts';
import { edgeOf, measured, onPaper } from '../measured.ts';
import { PRINCESS_OPENING } from '../princess.ts';
import { MOVING_TEXTS } from './moving.ts';

const part: StepText = (v) => [
  `Cut the front apart: along the dart at the ${edgeOf(v)} to the bust point, and along the waist dart to the`,
  'waist.',
  '',
  'The legs of the two darts are now the edges of two pieces. Walked from end to end, they have to be',
  'equally long above the bust point and below it.',
];

const smooth: StepText = (v, units) => [
  `Smooth the seam at the bust point on both pieces: ${measured(v, v.smooth!, units)} above it and as much`,
  'below it.',
  '',
  'The sharper edge loses a little more than the flat one. Up to an eighth of an inch of that is eased.',
];

const notches: StepText = (v, units) => [
  'Mark three pairs of notches on the seam, each on both edges:',
  '',
  '- one at the bust point,',
  `- one on the way to the ${edgeOf(v)} and one on the way to the waist, each`,
  `  ${onPaper(v, BESIDE.least, units)} to ${measured(v, BESIDE.most, units)} from it.`,
  '',
  'They stand just outside of the curve: between the outer two the longer edge is eased in.',
];

export const PRINCESS_WORDS: KindWords = {
  ...PRINCESS_OPENING,
  later: { ...MOVING_TEXTS, 'cut-apart': part, smooth, 'seam-notches': notches },
};
