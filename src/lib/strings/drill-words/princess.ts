import { BESIDE } from '../../lessons/drills/rules/princess.ts';
import { always, type KindWords, type StepWords } from './kind-words.ts';
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
  hints: [
    {
      codes: ['seam-notches/parted'],
      rungs: [
        'Are the two pieces there?',
        'The front has to be parted before its seam can have notches.',
        'Go back and part it along the two darts.',
      ],
    },
    {
      codes: ['seam-notches/bust'],
      rungs: [
        'How will whoever sews this find the bust point?',
        'The two halves of the seam meet in it; a notch stands there on both edges.',
        'Take the tool for the notches of a seam and place one at the bust point, or type 0.',
      ],
    },
    {
      codes: ['seam-notches/beside'],
      rungs: [
        'Which stretch of the seam is eased?',
        'It lies where the curve is, so one notch stands above it and one below. Mind the scale of the lengths.',
        'Place one in the middle between the two lengths on the upper part of the seam, and one as far down on the lower part.',
      ],
    },
  ],
};

export const PRINCESS_WORDS: KindWords = {
  title: (v) => `Princess seam from the ${edgeOf(v)}`,
  method: () => 'The darts vanish in a seam over the bust point.',
  ending: (v, units) =>
    `The seam is smoothed ${measured(v, v.smooth!, units)} above and below the bust point.`,
  steps: { ...MOVING_STEPS, 'cut-apart': part, smooth, 'seam-notches': notches },
};
