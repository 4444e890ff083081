import type { DrillStepId } from '../../lessons/drills/steps.ts';
import type { HintLadder } from '../../lessons/types.ts';
import { BLOCK_LADDERS } from './block-hints.ts';
import { READY_LADDERS } from './ready-hints.ts';

const always = (...rungs: readonly string[]): readonly HintLadder[] => [{ codes: [], rungs }];

/** The hints of the steps of drills, first rungs first. */
export type DrillHints = Readonly<Partial<Record<DrillStepId, readonly HintLadder[]>>>;

/** All of them; a page gets them as data. */
export const LADDERS: Readonly<Record<DrillStepId, readonly HintLadder[]>> = {
  ...BLOCK_LADDERS,
  'working-dart': [
    {
      codes: ['darts-extended/tip'],
      rungs: [
        'Where do the legs meet: at the bust point, or short of it?',
        'The bust point is the small cross; the sewn dart stops before it.',
        'Take the tool for the working dart and place the tip on the bust point.',
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
    'Take the tool for fullness, choose what the opening becomes, and type the length for both sides.',
  ),
  'cut-apart': always(
    'Are there two pieces yet?',
    'The cut goes along the new dart to the bust point and along the waist dart to the waist.',
    'Take the tool that parts a piece and choose the new dart and the waist dart.',
  ),
  'style-line': [
    {
      codes: [
        'line-ends/drawn',
        'line-ends/start',
        'line-ends/end',
        'line-ends/start-place',
        'line-ends/end-place',
      ],
      rungs: [
        'From which edge to which does the line run, and where on them does it begin and end?',
        'Both ends have their place in the exercise. Mind the scale of the lengths.',
        'Type the two ends along their edges, and leave one point between them.',
      ],
    },
    {
      codes: [
        'line-shape/inside',
        'line-shape/crosses-itself',
        'line-shape/meets-dart',
        'line-shape/kink',
        'line-shape/radius',
      ],
      rungs: [
        'Look along the line: is it one smooth curve that stays on the paper?',
        'Three points are enough for a curve like this one.',
        'Take points away until only the two ends and one beside the bust point are left.',
      ],
    },
    {
      codes: [],
      rungs: [
        'How near does the line pass to the bust point, and on which side?',
        'It passes on the side of centre front, and towards the shoulder it only moves away.',
        'Move the middle point until the distance lies between the two lengths of the exercise.',
      ],
    },
  ],
  connector: always(
    'Could the connector be shorter than it is?',
    'The shortest one stands square to the line.',
    'Slide the foot along the line until the reading stops falling.',
  ),
  'move-along': always(
    'Look at the side dart: do its legs meet, and do their tips?',
    'Cut from the shoulder along the line to the foot, up the connector, and stop in the bust point.',
    'Turn the freed part about the bust point, not about the foot, until the legs meet.',
  ),
  separate: always(
    'Are there two pieces, and do both lie on the block?',
    'The rest of the line is cut; then each piece is laid on the block.',
    'Take the tool that separates, then lay the upper piece on the block and the lower one.',
  ),
  smooth: always(
    'Run a finger along each edge: where is the corner?',
    'Both pieces are smoothed at the bust point, over the same length. Mind the scale of the length.',
    'Take the tool that smooths a seam, type the length, and do it on the centre piece and on the side piece.',
  ),
  notches: [
    {
      codes: ['notches-placed/line', 'notches-placed/before-foot', 'notches-placed/after-foot'],
      rungs: [
        'Find the place where the line is nearest to the bust point. Is it marked on both sides?',
        'One notch above it and one below, between the two lengths of the exercise. Mind their scale.',
        'Pull a plus sign along the line until the reading lies between the two lengths; then one to the other side.',
      ],
    },
    {
      codes: ['notches-placed/symmetric'],
      rungs: [
        'Turn the seam upside down in your mind: do the notches fall on each other?',
        'Their distances from the two ends should differ.',
        'Move one of them a little, so that it still lies between the two lengths.',
      ],
    },
    {
      codes: ['notches-placed/count'],
      rungs: [
        'How many notches are there?',
        'Two or three say all that has to be said.',
        'Take the others away.',
      ],
    },
    {
      codes: ['notches-placed/after-cutting'],
      rungs: [
        'Was the line whole when you marked it?',
        'Notches come before the scissors.',
        'Undo the cut, mark the notches, and cut again.',
      ],
    },
  ],
  leftover: [
    {
      codes: ['leftover/bridged', 'leftover/smooth'],
      rungs: [
        'Does the edge run smoothly over the gap?',
        'It is bridged between the notches.',
        'Bridge it so that the blend ends a little before the notches on both sides.',
      ],
    },
    {
      codes: ['leftover/treated', 'leftover/over-limit', 'leftover/trim-not-needed'],
      rungs: [
        'What does this cloth do with the excess?',
        'A knit eases it; from a stable woven it is taken out, unless it is very little.',
        'Mark it as eased from notch to notch on a knit; take it out at the shoulder of a woven.',
      ],
    },
    {
      codes: ['leftover/end', 'leftover/amount'],
      rungs: [
        'At which end was it taken out, and how much?',
        'At the shoulder, and as much as was measured.',
        'Undo, and take the measured amount out at the shoulder end.',
      ],
    },
    {
      codes: ['leftover/notches'],
      rungs: [
        'Do the notches of the trimmed stretch still meet their partners?',
        'The one between gap and shoulder has moved.',
        'Mark it again from the partner.',
      ],
    },
    {
      codes: ['leftover/back-trued'],
      rungs: [
        'What is the redrawn shoulder sewn to?',
        'The back shoulder has to be just as long.',
        'True the back’s shoulder with the front.',
      ],
    },
    {
      codes: ['sliver/rest', 'sliver/area'],
      rungs: [
        'Which edge has changed that should not have?',
        'Only the bridge and the redrawn shoulder may differ from the block.',
        'Go back to the step in which that part was moved.',
      ],
    },
  ],
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
  ...READY_LADDERS,
};
