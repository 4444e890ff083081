import type { DrillStepId } from '../../lessons/drills/steps.ts';
import type { HintLadder } from '../../lessons/types.ts';
import { BLOCK_LADDERS } from './block-hints.ts';
import { always } from './ladder.ts';
import { LINE_LADDERS } from './line-hints.ts';
import { READY_LADDERS } from './ready-hints.ts';

/** The hints of the steps of drills, first rungs first. */
export type DrillHints = Readonly<Partial<Record<DrillStepId, readonly HintLadder[]>>>;

/** All of them; a page gets them as data. */
export const LADDERS: Readonly<Record<DrillStepId, readonly HintLadder[]>> = {
  ...BLOCK_LADDERS,
  ...LINE_LADDERS,
  'working-dart': [
    {
      codes: ['darts-extended/tip'],
      rungs: [
        'Where do the legs meet: at the bust point, or short of it?',
        'The bust point is the small cross; the sewn dart stops before it.',
        'Place the tip of the working dart on the bust point.',
      ],
    },
  ],
  'slash-line': always(
    'Compare both ends of your line with what is asked: which one is off?',
    'It begins at the given length on the given edge and ends in the bust point. Mind the scale of the length.',
    'Type the length along the edge in the form under the table, and let the end snap to the bust point.',
  ),
  lines: always(
    'Measure along the edge from line to line, and from the middle of them to the end of the edge.',
    'The middle of the row lies at the given place. Half of the distance goes to either side of it.',
    'Work out where each line begins, and type these lengths along the edge one after the other.',
  ),
  move: always(
    'Look at the old dart, then at the opening: which of them is not as asked?',
    'Cut to the bust point, not through it, and turn about the bust point only.',
    'Turn the freed part about the bust point, by intent where you can: until the legs meet, or by a share.',
  ),
  pivot: always(
    'Where was the pin, and which way did the block swing?',
    'The pin stands in the bust point, and the block swings so that the old dart closes.',
    'Place the mark at the given length, pin the bust point, and swing until the legs meet.',
  ),
  'sewn-point': always(
    'Where will the stitching end, and how far is that from where the dart aims?',
    'The length is that of the paper which the exercise names. At half scale it is half of what it is in full size.',
    'Take the tool that backs a dart off, choose the dart, and type the length.',
  ),
  'true-legs': always(
    'Measure both legs of each dart: are they equally long?',
    'A leg over an alternate pivot begins elsewhere than its partner. What is sewn together has to be equally long.',
    'Take the tool that makes the legs alike, and use it on each dart.',
  ),
  cap: [
    {
      codes: ['dart-finished/point'],
      rungs: [
        'Is the dart still drawn to its sewn point?',
        'The cap belongs to a dart that is backed off.',
        'Back the dart off by the given length first, then cap it.',
      ],
    },
    {
      codes: ['dart-finished/cap'],
      rungs: [
        'Which way is the dart to be pressed here?',
        'Not the habit counts but the way that the exercise names.',
        'Take the tool for the cap, say which way the dart is folded, and choose the dart.',
      ],
    },
  ],
  'draw-over': always(
    'What was the opening to become, and how far does the new edge reach?',
    'As much of the old edge gives way on one side of the opening as on the other. Mind the scale of the length.',
    'Choose what the opening becomes, and type the length for both sides.',
  ),
  'cut-apart': always(
    'Are there two pieces yet?',
    'The cut goes along the new dart to the bust point and along the waist dart to the waist.',
    'Choose the new dart and the waist dart: the piece is parted along both.',
  ),
  smooth: always(
    'Run a finger along each edge: where is the corner?',
    'Both pieces are smoothed at the bust point, over the same length. Mind the scale of the length.',
    'Type the length of the smoothing, and do it on the centre piece and on the side piece.',
  ),
  'seam-notches': [
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
        'Place one notch of the seam at the bust point, or type 0.',
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
  ...READY_LADDERS,
};
