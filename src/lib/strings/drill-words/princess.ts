import { always, type KindWords, type StepWords } from './kind-words.ts';
import { edgeOf, measured } from './measured.ts';
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
  hints: always(
    'Are there two pieces yet?',
    'The cut goes along the new dart to the bust point and along the waist dart to the waist.',
    'Take the tool that parts a piece and choose the new dart and the waist dart.',
  ),
};

const smooth: StepWords = {
  title: 'Smooth the seam',
  text: (v, units) => [
    `Smooth the seam at the bust point on both pieces: ${measured(v, v.smooth!, units)} above it and as much`,
    'below it.',
    '',
    'The sharper edge loses a little more than the flat one. Up to an eighth of an inch of that is eased.',
  ],
  hints: always(
    'Run a finger along each edge: where is the corner?',
    'Both pieces are smoothed at the bust point, over the same length. Mind the scale of the length.',
    'Take the tool that smooths a seam, type the length, and do it on the centre piece and on the side piece.',
  ),
};

export const PRINCESS_WORDS: KindWords = {
  title: (v) => `Princess seam from the ${edgeOf(v)}`,
  method: () => 'The darts vanish in a seam over the bust point.',
  ending: (v, units) =>
    `The seam is smoothed ${measured(v, v.smooth!, units)} above and below the bust point.`,
  steps: { ...MOVING_STEPS, 'cut-apart': part, smooth },
};
