import { BESIDE_FOOT, EASES } from '../../../lessons/drills/rules/line.ts';
import { stepNumber } from '../../../lessons/drills/steps.ts';
import type { KindWords, StepText } from '../kind-words.ts';
import { measured, onPaper, paperOf, scaleNote } from '../measured.ts';
import { clothOf, READY_OPENING, widthLines } from '../ready.ts';

/** What is done on the table when it begins. On paper it is still to be done: the practice sheet has it. */
const BEFORE = {
  'open-out': () => ['Open the half front out about centre front.'],
  'style-line': (v, units) => [
    'Draw one smooth style line over the whole front:',
    `- from the right shoulder seam, ${measured(v, v.goals[0]!.mm, units)} from the neck point`,
    `- to the left side seam, ${measured(v, v.across!.end.mm, units)} below its dart`,
    `- past both bust points, ${measured(v, v.across!.pass, units)} off: past B1 on the side of centre front, past B2`,
    '  on the side of the waist',
  ],
  notches: (v, units) => [
    'Mark a notch on either side of each place of the line that is nearest to a bust point,',
    `${onPaper(v, BESIDE_FOOT.least, units)} to ${measured(v, BESIDE_FOOT.most, units)} from it, and no two of them alike.`,
  ],
  'working-darts': () => ['Draw the legs of both darts up to the bust points.'],
  connectors: () => ['Join each bust point to the nearest place of the line by a connector.'],
  'first-dart': () => [
    'Cut from the shoulder along the line to the foot, and up to B1. Turn the freed part until the right dart is closed.',
  ],
  'second-dart': () => [
    'Cut from the left side along the line to the second foot, and up to B2. Turn the freed part until the left',
    'dart is closed.',
  ],
  separate: () => [
    'Cut the rest of the line, and lay both pieces on the block: every part lies where it always did.',
  ],
} satisfies Readonly<Record<string, StepText>>;

const allowances: StepText = (v, units) => [
  `Give each edge of the pieces for the ${clothOf(v)} its width, those of the back too:`,
  ...widthLines(v, units).map((line) => `- ${line}`),
  '- centre back: 0 on the fold (give the 0, too), or the width of a seam; halves that were trued each by itself have',
  '  no fold, and are sewn to each other',
  '',
  'At both ends of the style line the crossing cut line is mirrored in the style line, which is sewn and pressed',
  'open first; a square end is enough as well. Elsewhere a mitre will do.',
  '',
  'Carry the notches out to the cut line on each piece of the front.',
  '',
  scaleNote(v),
];

const labelAndGrain: StepText = (v) => [
  `Write on each piece for the ${clothOf(v)}, on the back too:`,
  '- a name of its own',
  '- how often it is cut: the front pieces once; a back that is the same on both sides twice, a pair, or once on',
  '  the fold where its centre has no allowance',
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
  'the difference is what you eased, say so. Without a dart of its own the shoulder of the back is longer by a few',
  'millimetres, which are eased in: that is no fault, and it matches but for the ease.',
];

/** As `rules/ready.ts` has it: 1/8 in is acceptable (read, trade notes), within the band. mm. */
const WALKED = { wide: 6.4, usual: 3.2, strict: 1.6 } as const;

/** What lies on the table before each of its steps. */
const DONE = [
  'the slanted seam is drawn and cut, with both darts in it',
  'the leftover is treated for both cloths',
  'the allowances are added',
  'the pieces are labelled, with their grainlines',
];

/** What a step asks, in a sentence, beside its text. */
const ASKS = {
  treat: (v, units) => [
    'Copy the pieces for a stable woven, bridge the openings, and treat what is left over at each foot:',
    `the knit eases up to ${measured(v, EASES.knit, units)}, the woven up to ${onPaper(v, EASES.woven, units)}.`,
  ],
  allowances: (v, units) => [
    `Give the pieces for the ${clothOf(v)} their widths, ${paperOf(v)}: ${widthLines(v, units).join('; ')}.`,
  ],
  'label-and-grain': (v) => [
    `On the pieces for the ${clothOf(v)} write what each is and how it is cut, and draw the grainlines of the front.`,
  ],
  'walk-the-seams': (v) => [
    `Walk the five seams of the ${clothOf(v)} on the seam line, and say of each what you found.`,
  ],
} satisfies Readonly<Record<string, StepText>>;

const alone: KindWords['alone'] = (v, units, id) => {
  const asks: StepText | undefined = Object.hasOwn(ASKS, id) ? ASKS[id as keyof typeof ASKS] : undefined;
  const done = DONE.slice(0, stepNumber('ready', id));
  const said = done.length < 2 ? done.join('') : `${done.slice(0, -1).join(', ')}, and ${done.at(-1)}`;
  return [...(asks?.(v, units) ?? []), `Done before it: ${said}.`].join(' ');
};

export const READY_WORDS: KindWords = {
  ...READY_OPENING,
  later: { ...BEFORE, allowances, 'label-and-grain': labelAndGrain, 'walk-the-seams': walkTheSeams },
  alone,
};
