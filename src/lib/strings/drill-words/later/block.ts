import { BLOCK_OPENING } from '../block.ts';
import type { KindWords, StepText } from '../kind-words.ts';
import { dartsOf, scaleNote } from '../measured.ts';

const read: StepText = (v) => {
  const edge = v.darts[0] === 'right' ? 'side seam' : 'waist';
  return [
    `Read three numbers off the ${dartsOf(v)} and enter them:`,
    '- the angle between its two legs, carried on to the bust point',
    `- the leg length, from the ${edge} to the bust point`,
    `- the intake, straight across the ${edge} from leg end to leg end`,
    '',
    'Pull a ruler from point to point; two rulers from the same point show the angle between them. Measure',
    'from the bust point, not from the point of the sewn dart.',
    '',
    scaleNote(v),
    v.scale === 'half'
      ? 'Enter what a ruler shows on that paper as it stands. An angle is the same at any scale.'
      : 'What a ruler of your own shows on half-scale paper has to be doubled. An angle is the same at any scale.',
  ];
};

const openOut: StepText = () => [
  'Open the half out to a whole front: choose the edge that it is mirrored across.',
  '',
  'By hand you lay the half on folded paper, that edge on the fold, trace it through, and unfold. The two',
  'halves meet along it without gap or overlap, and the second falls where the other side of the body is.',
  '',
  'You may try another straight edge: the table shows what comes of it, and Undo brings the half back.',
];

export const BLOCK_WORDS: KindWords = { ...BLOCK_OPENING, later: { read, 'open-out': openOut } };
