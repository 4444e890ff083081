import type { DrillStepId } from '../../lessons/drills/steps.ts';
import type { HintLadder } from '../../lessons/types.ts';

/** The hints of the steps that make pieces ready to be sewn, and of those that are done before, as in the main lesson. */
export const READY_LADDERS = {
  // These are done when a drill begins that has them: nobody is asked for them.
  'working-darts': [],
  connectors: [],
  'first-dart': [],
  'second-dart': [],
  treat: [
    {
      codes: ['leftover/copy'],
      rungs: [
        'Two cloths need two sets of pieces.',
        'The copy comes before anything is treated.',
        'Copy the pieces for a stable woven, then treat both sets.',
      ],
    },
    {
      codes: ['leftover/bridged', 'leftover/smooth'],
      rungs: [
        'Look at the mouth of each opening: does the seam run over it smoothly?',
        'The bridge blends into the edge on both sides, between the notches.',
        'Bridge it so that the blend ends a little before the notches on both sides.',
      ],
    },
    {
      codes: ['leftover/treated'],
      rungs: [
        'The seam is bridged, but it is still longer than its partner.',
        'A knit takes the excess up, a stable woven does not.',
        'Ease it in on the knit pieces; take it out on the woven copy.',
      ],
    },
    {
      codes: ['leftover/over-limit'],
      rungs: [
        'This cloth cannot take that much ease.',
        'The excess is larger than the limit for it.',
        'Undo, and take it out at the end of the seam.',
      ],
    },
    {
      codes: ['leftover/trim-not-needed'],
      rungs: [
        'Does this cloth need the trimming?',
        'The excess is within what it eases by itself.',
        'Undo, and mark it as eased between its notches.',
      ],
    },
    {
      codes: ['leftover/end'],
      rungs: [
        'At which end of the seam did this dart open?',
        'What a dart brought in is taken out at the end it went to.',
        'Trim the lower piece at the shoulder, and the upper piece at the left side.',
      ],
    },
    {
      codes: ['leftover/amount'],
      rungs: [
        'Compare what you took off with the excess that was measured.',
        'Left over after trimming should be nothing.',
        'Undo, and take out the measured amount.',
      ],
    },
    {
      codes: ['leftover/notches'],
      rungs: [
        'The trimmed stretch became shorter: do its notches still meet their partners?',
        'Those between opening and trimmed end moved against the partner.',
        'Mark them again, as far from the trimmed end as on the partner.',
      ],
    },
    {
      codes: ['leftover/back-trued'],
      rungs: [
        'The front edge was redrawn. What is it sewn to?',
        'The back edge has to be as long as the front one again.',
        'True the back: the right shoulder for the lower piece, the left side for the upper piece.',
      ],
    },
    {
      codes: ['sliver/rest'],
      rungs: [
        'Lay the treated piece on the block again.',
        'Only the bridge and the redrawn end may differ. Everything else must still lie on the block.',
        'Undo what drew another edge anew, and treat the two openings alone.',
      ],
    },
  ],
  allowances: [
    {
      codes: ['allowances/pieces', 'allowances/before-truing'],
      rungs: [
        'Is every seam line finished?',
        'Allowance comes after bridging and truing.',
        'Go back to the leftover, and treat both openings of these pieces first.',
      ],
    },
    {
      codes: ['allowances/width'],
      rungs: [
        'Take the edges in turn round each piece: none should be left out.',
        'Read the width that was expected: is yours half or twice as much?',
        'The exercise gives each kind of edge its width. Mind the scale; an edge that will be bound gets 0.',
      ],
    },
    {
      codes: ['allowances/partners'],
      rungs: [
        'Lay the two partners edge on edge: do their seam lines fall on each other?',
        'Both partners of a seam carry the same width.',
        'Give the style line one width on both pieces, and front and back one width at shoulder and side.',
      ],
    },
    {
      codes: ['allowances/corner'],
      rungs: [
        'Fold the style seam open in your mind: what sticks out at its ends?',
        'The crossing cut line is mirrored in the seam that is sewn and pressed first.',
        'At both ends of the style line choose the mirrored corner, with the style line sewn first.',
      ],
    },
    {
      codes: ['allowances/notches'],
      rungs: [
        'Where do the shears go, and where are the notches?',
        'Once the piece is cut, only what reaches the cut line is left to see.',
        'Carry the notches out to the cut line on each piece of the front.',
      ],
    },
  ],
  'label-and-grain': [
    {
      codes: ['labels/label', 'labels/pieces', 'labels/name'],
      rungs: [
        'Could somebody else tell your pieces apart?',
        'Each piece has a name of its own.',
        'Name each by where it sits, “Upper front” for example, the back too.',
      ],
    },
    {
      codes: ['labels/cut'],
      rungs: [
        'How often is this shape needed for one top?',
        'The front is different on its two sides: there is no second one of it.',
        'Cut each front piece once, and so each half of the back that was trued by itself.',
      ],
    },
    {
      codes: ['labels/on-fold'],
      rungs: [
        'What has centre back: the width of a seam, or nothing?',
        'Where centre back has no allowance there is no seam: the edge is laid on the fold of the cloth.',
        'No allowance: cut once, on the fold. With an allowance, or trued by itself: not on the fold.',
      ],
    },
    {
      codes: ['labels/right-side-up'],
      rungs: [
        'What happens if the piece is laid face down?',
        'The slant would run the other way.',
        'Mark each front piece “right side up”, and each half of the back that was trued by itself.',
      ],
    },
    {
      codes: ['grain/drawn'],
      rungs: [
        'Which way does the cloth lie?',
        'Each piece has one grainline of its own.',
        'Draw it in the middle of the piece, along its centre front.',
      ],
    },
    {
      codes: ['grain/on-piece'],
      rungs: [
        'By which line is the piece laid on the cloth?',
        'The grainline stands on the piece itself, and is cut out with it.',
        'Move it into the middle of the piece.',
      ],
    },
    {
      codes: ['grain/direction'],
      rungs: [
        'Did you take the direction from a part that was turned?',
        'Only the part that stayed still has kept its grain.',
        'Draw the grainline at 0° to the centre front of that part.',
      ],
    },
  ],
  'walk-the-seams': [
    {
      codes: ['walked/along'],
      rungs: [
        'Which line does the needle follow?',
        'Cut lines differ round a curve even where the seams agree.',
        'Walk it again, along the seam line.',
      ],
    },
    {
      codes: ['walked/difference'],
      rungs: [
        'In which interval does the difference begin?',
        'A seam that is too long was not trimmed, eased or trued.',
        'Go back to the leftover: take out the measured amount, true the back, mark the notches again.',
      ],
    },
    {
      codes: ['walked/says'],
      rungs: [
        'Look at the intervals between the notches, not at the whole.',
        'Where you eased, the two sides differ by just that much.',
        'Say “match” where every interval agrees, “eased” where only the marked ease differs.',
      ],
    },
    {
      codes: ['walked/done'],
      rungs: [
        'Which seams are not walked yet?',
        'There are five: the style line, two shoulders, two sides.',
        'Walk each of them along the seam line and say what you found.',
      ],
    },
  ],
} satisfies Partial<Record<DrillStepId, readonly HintLadder[]>>;
