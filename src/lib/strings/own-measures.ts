import { MEASURE_LIMITS } from '../pattern/figures.ts';
import type { Measures } from '../pattern/block.ts';
import { formatLength, type RulerUnits } from './units.ts';

/** The measures of the draft, and how each is taken. */
export const MEASURE_WORDS: Readonly<
  Record<keyof Measures, { readonly name: string; readonly taken: string }>
> = {
  bust: { name: 'Bust', taken: 'Round the fullest part, the tape level and easy.' },
  waist: { name: 'Waist', taken: 'Round the natural waist, where the body bends to the side.' },
  napeToWaist: {
    name: 'Nape to waist',
    taken: 'From the bone at the nape down the centre back to the waist.',
  },
};

/** What becomes of own measures. */
export const OWN_STAY =
  'They stay on this device, in this work only, and in a recipe file that you save yourself. They go when you delete the work and empty the bin.';
export const OWN_FIT =
  'A block from three measures is a beginning: fit it in a toile before you trust it on a body.';
export const OWN_UNITS: Readonly<Record<RulerUnits, string>> = {
  mm: 'In millimetres, or with the unit written behind: 84 cm, 33 1/8 in.',
  inch: 'In inches, or with the unit written behind: 33 1/8, 84 cm, 840 mm.',
};

const GRAIN: Readonly<Record<RulerUnits, number>> = { mm: 0.1, inch: 25.4 / 16 };

/** The nearest length that can be shown and lies within. */
const shown = (mm: number, round: (n: number) => number, edge: number, units: RulerUnits): string =>
  formatLength(round(mm / GRAIN[units] + edge) * GRAIN[units], units);

/** What is wrong with a measure that was typed: what the draft can be drawn with beside the others, in mm, and what was found. */
export function measureProblem(
  key: keyof Measures,
  { min, max }: { readonly min: number; readonly max: number },
  typed: string,
  units: RulerUnits,
): string {
  const own = MEASURE_LIMITS[key];
  const beside = min !== own.min || max !== own.max ? ' beside this bust' : '';
  const found = typed.trim() === '' ? 'nothing yet' : `“${typed.trim().slice(0, 24)}”`;
  const [least, most] = [shown(min, Math.ceil, -1e-6, units), shown(max, Math.floor, 1e-6, units)];
  return `${MEASURE_WORDS[key].name}: the draft works with ${least} to ${most}${beside}; here is ${found}.`;
}
