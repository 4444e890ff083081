import type { DrillHints } from './hints.ts';
import { always } from './ladder.ts';

/** The hints of the steps in which a dart goes into a line beside the bust point. */
export const LINE_LADDERS = {
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
} satisfies DrillHints;
