import { EASES } from '../../lessons/drills/rules/line.ts';
import type { Variant } from '../../lessons/drills/types.ts';
import type { RulerUnits } from '../units.ts';
import type { OpeningWords, StepText } from './kind-words.ts';
import { measured, onPaper, paperOf } from './measured.ts';

/** The cloth whose pieces are made ready in the end. */
export const clothOf = (v: Variant): string => (v.drill.fabric === 'knit' ? 'knit' : 'stable woven');

/** The widths that the exercise asks for, on the paper that it names, each with the edges that get it. */
export function widthLines(v: Variant, units: RulerUnits): readonly string[] {
  const { seam, curve, hem } = v.widths!;
  const curves = curve === 0 ? 'none, since they will be bound' : onPaper(v, curve, units);
  return [
    `style line, shoulders and sides: ${onPaper(v, seam, units)}`,
    `neckline and armholes: ${curves}`,
    `waist, for the hem: ${onPaper(v, hem, units)}`,
  ];
}

const treat: StepText = (v, units) => [
  'Both darts were moved into the seam, and the front was cut apart. At each foot the piece that holds the bust',
  'point is longer than its partner by the excess.',
  '',
  'Make a copy of the pieces for a stable woven first: the two cloths need different things. On every piece',
  'bridge the opening, and blend the bridge in on both sides, inside the notches. Then:',
  `- for the knit, mark the stretch between the two notches as eased. It eases ${measured(v, EASES.knit, units)} at`,
  '  most, by the teacher’s setting.',
  `- for the woven, which eases ${onPaper(v, EASES.woven, units)} at most, take the measured excess out at the end of the seam:`,
  '  at the right shoulder on the lower piece, at the left side on the upper one. True the back with each, and',
  '  mark the notches between opening and that end again.',
  ...(v.drill.step === undefined
    ? ['', `The steps after this one are about the pieces for the ${clothOf(v)}.`]
    : []),
];

export const READY_OPENING: OpeningWords = {
  title: (v) => `Pieces made ready to be sewn, in a ${clothOf(v)}`,
  method: () =>
    'The slanted seam is drawn and cut, with both darts in it. Treat the leftover for both cloths, add the allowances, label the pieces, and walk the seams.',
  where: (v, units) => [`Allowances, ${paperOf(v)}: ${widthLines(v, units).join('; ')}.`],
  steps: {
    'open-out': 'Open out',
    'style-line': 'Draw the style line',
    notches: 'Mark the notches',
    'working-darts': 'Draw the working darts',
    connectors: 'Draw the connectors',
    'first-dart': 'Move the first dart',
    'second-dart': 'Move the second dart',
    separate: 'Separate, close and overlay',
    treat: 'Treat the leftover',
    allowances: 'Add the allowances',
    'label-and-grain': 'Label and grain',
    'walk-the-seams': 'Walk the seams',
  },
  first: { treat },
};
