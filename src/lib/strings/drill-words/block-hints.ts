import type { DrillHints } from './hints.ts';

const found = (...whats: readonly string[]): readonly string[] =>
  whats.map((what) => `landmarks-found/${what}`);

/** The hints of the steps in which the block is read. */
export const BLOCK_LADDERS = {
  find: [
    {
      codes: found('bust-point'),
      rungs: [
        'Where does the dart aim, and where does it only end?',
        'Lay a ruler along each leg and carry it on beyond the end of the dart.',
        'The two lines cross at the small cross: that is the bust point.',
      ],
    },
    {
      codes: found('sewn-point', 'waist-sewn-point'),
      rungs: [
        'Where does the stitching of the dart end?',
        'A sewn dart stops short of the bust point, so that the cloth lies round over it.',
        'Follow the two legs from the edge inwards: where they meet, the sewn dart ends.',
      ],
    },
    {
      codes: found('dart-upper', 'dart-lower'),
      rungs: [
        'The side dart has two legs, and both begin on the side seam.',
        'Upper is nearer to the armhole, lower is nearer to the waist.',
        'Point at the middle of a leg, well away from the other one.',
      ],
    },
    {
      codes: found('waist-dart-centre', 'waist-dart-side'),
      rungs: [
        'The waist dart has two legs, and both begin on the waist.',
        'The inner one is nearer to centre front, the outer one is nearer to the side seam.',
        'Point at the middle of a leg, well away from the other one.',
      ],
    },
    {
      codes: found('centre-front', 'neck-centre', 'waist-centre'),
      rungs: [
        'Where is the middle of the body on this half?',
        'Centre front is the long straight edge that has the other half of the body on its far side.',
        'It runs from the neckline at its upper end to the waist at its lower end.',
      ],
    },
    {
      codes: found('neckline', 'shoulder', 'neck-point', 'shoulder-point'),
      rungs: [
        'Which edge lies round the neck, and which one runs from the neck to the arm?',
        'The neckline is the curve at the top beside centre front; the shoulder seam is the short straight edge.',
        'The shoulder seam begins at the neck point, where the neckline ends, and ends at the shoulder point.',
      ],
    },
    {
      codes: found('armhole', 'side', 'waist', 'underarm', 'side-waist'),
      rungs: [
        'Go round the paper from the shoulder: round the arm, down the side, and back along the waist.',
        'The armhole is the curve below the shoulder; the side seam and the waist follow it.',
        'Armhole and side seam meet at the underarm; side seam and waist meet at the lowest outer corner.',
      ],
    },
  ],
  read: [
    {
      codes: ['readings/dart-angle'],
      rungs: [
        'From which point did you measure the angle?',
        'It is taken at the bust point, with both legs carried on to it.',
        'Pull a ruler from the bust point to each leg end; the angle stands between the two.',
      ],
    },
    {
      codes: ['readings/leg-length'],
      rungs: [
        'Where does the leg begin for this reading, and where does it end?',
        'It runs from the edge of the paper to the bust point. Mind the scale of the length.',
        'If you read half of it, or twice as much, it is the other scale; if too little, you began at the sewn point.',
      ],
    },
    {
      codes: ['readings/intake'],
      rungs: [
        'The intake lies across the open end of the dart.',
        'Pull the ruler from one leg end to the other, straight. Mind the scale of the length.',
        'If your number is half of what is expected, or twice as much, it is that of the other scale.',
      ],
    },
  ],
  'open-out': [
    {
      codes: ['opened-out/mirror'],
      rungs: [
        'Where is the middle of the body on this half?',
        'The two halves share one whole edge, from the neckline to the waist.',
        'Undo, then choose centre front as the edge to mirror across.',
      ],
    },
  ],
} satisfies DrillHints;
