import type { KindWords, StepText } from '../kind-words.ts';
import { measured, scaleNote } from '../measured.ts';
import { clothOf, READY_OPENING, widthLines } from '../ready.ts';

/** What lies on the table already, as it was done. */
const DONE = {
  'open-out': () => ['The half front is opened out about centre front.'],
  'style-line': (v, units) => [
    'One smooth curve runs from the right shoulder to the left side seam, below the dart. It passes both bust',
    `points ${measured(v, v.across!.pass, units)} off: B1 on the side of centre front, B2 on the side of the waist.`,
  ],
  notches: () => ['A notch stands on either side of each place that is nearest to a bust point.'],
  'working-darts': () => ['The legs of both darts run to the bust points.'],
  connectors: () => ['A connector joins each bust point to the nearest place of the line.'],
  'first-dart': () => ['The right dart is closed, and opens at the shoulder end of the line.'],
  'second-dart': () => ['The left dart is closed, and opens at the side end of the line.'],
  separate: () => ['The line is cut, and both pieces lie on the block.'],
} satisfies Readonly<Record<string, StepText>>;

const allowances: StepText = (v, units) => [
  `Give each edge of the pieces for the ${clothOf(v)} its width, those of the back too:`,
  ...widthLines(v, units).map((line) => `- ${line}`),
  '- Centre back: none on the fold, or the width of a seam.',
  '',
  'At both ends of the style line the crossing cut line is mirrored in the style line, which is sewn and pressed',
  'open first; a square end is enough as well. Elsewhere a mitre will do.',
  '',
  'Carry the notches out to the cut line on each piece of the front.',
  scaleNote(v),
];

const labelAndGrain: StepText = (v) => [
  `Write on each piece for the ${clothOf(v)}, on the back too:`,
  '- a name of its own',
  '- how often it is cut: the front pieces once; a back that is the same on both sides twice, a pair',
  '- right side up, on whatever has no second half: the front pieces, and halves of the back that were trued',
  '  each by itself',
  '',
  'Draw one grainline on each piece of the front, along the centre front of the part that stayed still. On a',
  'part that was turned the old grain is void.',
];

const walkTheSeams: StepText = (v, units) => [
  `Walk five seams of the ${clothOf(v)} on the seam line, and say of each what you found: the style line, both`,
  'shoulders, both sides.',
  '',
  `They match if no interval between two notches differs by more than ${measured(v, WALKED[v.drill.band], units)}. Where`,
  'the difference is what you eased, say so.',
];

/** As `rules/ready.ts` has it: 1/8 in is acceptable (read, trade notes), within the band. mm. */
const WALKED = { wide: 6.4, usual: 3.2, strict: 1.6 } as const;

export const READY_WORDS: KindWords = {
  ...READY_OPENING,
  later: { ...DONE, allowances, 'label-and-grain': labelAndGrain, 'walk-the-seams': walkTheSeams },
};
