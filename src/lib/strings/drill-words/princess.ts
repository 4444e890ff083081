import { BESIDE } from '../../lessons/drills/rules/princess.ts';
import type { KindWords, StepWords } from './kind-words.ts';
import { edgeOf, measured, onPaper } from './measured.ts';
import { MOVING_STEPS } from './moving.ts';

const part: StepWords = {
  title: 'Cut it apart',
  text: (v) => [
    `Cut the front apart: along the dart at the ${edgeOf(v)} to the bust point, and along the waist dart to the`,
    'waist.',
    '',
    'The legs of the two darts are now the edges of two pieces. Walked from end to end, they have to be',
    'equally long above the bust point and below it.',
  ],
};

const smooth: StepWords = {
  title: 'Smooth the seam',
  text: (v, units) => [
    `Smooth the seam at the bust point on both pieces: ${measured(v, v.smooth!, units)} above it and as much`,
    'below it.',
    '',
    'The sharper edge loses a little more than the flat one. Up to an eighth of an inch of that is eased.',
  ],
};

const notches: StepWords = {
  title: 'Mark the notches',
  text: (v, units) => [
    'Mark three pairs of notches on the seam, each on both edges:',
    '',
    '- one at the bust point,',
    `- one on the way to the ${edgeOf(v)} and one on the way to the waist, each`,
    `  ${onPaper(v, BESIDE.least, units)} to ${measured(v, BESIDE.most, units)} from it.`,
    '',
    'They stand just outside of the curve: between the outer two the longer edge is eased in.',
  ],
};

export const PRINCESS_WORDS: KindWords = {
  title: (v) => `Princess seam from the ${edgeOf(v)}`,
  method: () => 'The darts vanish in a seam over the bust point.',
  ending: (v, units) =>
    `The seam is smoothed ${measured(v, v.smooth!, units)} above and below the bust point.`,
  steps: { ...MOVING_STEPS, 'cut-apart': part, smooth, 'seam-notches': notches },
};
