import { degrees, radians } from '../geometry/trig.ts';
import { isAngle, type PaperMeasure } from '../grading/paper-value.ts';
import { nameOf, theDart } from './names.ts';
import { parseLength } from './parse-length.ts';
import { decimal, formatLength, type RulerUnits } from './units.ts';

const INCH = 25.4;
/** Parts of an inch that a ruler's reading may be given in. */
const PARTS = 64;

const upper = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What a field is for: "Intake of the slash", "Neckline". */
export function paperLabel(what: PaperMeasure, about: string): string {
  if (what === 'seam-length') return upper(nameOf(about));
  if (what === 'allowance-width') return `Allowance, ${nameOf(about)}`;
  const dart = theDart(about);
  if (what === 'dart-angle') return `Angle of ${dart}`;
  if (what === 'leg-length') return `Leg of ${dart}`;
  if (what === 'connector-length') return `Connector of ${dart}`;
  if (what === 'connector-angle') return `Angle of the connector of ${dart} to the style line`;
  return what === 'intake' ? `Intake of ${dart}` : `Opening left by ${dart}`;
}

/** Where ruler or protractor goes. */
export const PLACES: Readonly<Record<PaperMeasure, string>> = {
  'dart-angle':
    'Centre of the protractor on the bust point, its zero line along one leg; read where the other leg runs out. Draw legs that stop short on to the bust point.',
  'leg-length':
    'Ruler from the bust point straight to the end of the leg on the seam line, not to the cut line.',
  intake: 'Ruler straight across, from the end of one leg to the end of the other, on the seam line.',
  'connector-length': 'Ruler from the bust point straight to the foot of the connector on the style line.',
  'connector-angle':
    'Centre of the protractor on the foot, its zero line along the style line as it runs there; read where the connector goes up, the smaller of its two angles.',
  opening: 'Ruler straight across the opening in the seam edge, from one end of the cut to the other.',
  'seam-length':
    'Along the seam line, never the cut line: on a curve stand the ruler on its edge and roll it along. Add the parts up; leave out open darts and what is folded away in a dart’s cap.',
  'allowance-width': 'Ruler square to the seam line, from the seam line out to the cut line.',
};

/** Where a leg bends at an alternate pivot. */
export const BENT =
  'These legs bend at an alternate pivot: lay ruler and protractor straight from the bust point to the ends of the legs all the same.';

/** The value of a field: mm on paper or radians. undefined where nothing stands in it; NaN for what is no length above zero, or no angle up to 180°. */
export function paperValue(text: string, what: PaperMeasure, units: RulerUnits): number | undefined {
  if (text.trim() === '') return undefined;
  if (!isAngle(what)) {
    const length = parseLength(text, units);
    return length !== undefined && length > 0 && length < 5000 ? length : Number.NaN;
  }
  const number = /^\s*(\d+(?:[.,]\d+)?)\s*°?\s*$/.exec(text)?.[1];
  const angle = Number(number?.replace(',', '.') ?? Number.NaN);
  return angle <= 180 ? radians(angle) : Number.NaN;
}

/** A value as it stands in a field: mm on paper or radians, in the learner's units; inches as a fraction where they are one. */
export function paperText(value: number, what: PaperMeasure, units: RulerUnits): string {
  if (isAngle(what)) return decimal(degrees(value), 2);
  if (units === 'mm') return decimal(value, 2);
  const count = Math.floor((value / INCH) * PARTS + 0.5);
  if (Math.abs(count / PARTS - value / INCH) > 1e-4) return String(Number((value / INCH).toFixed(4)));
  return formatLength(value, 'inch', false, PARTS).replace(/ in$/, '');
}

/** What is expected in a field. */
export const paperExpected = (what: PaperMeasure, units: RulerUnits): string =>
  isAngle(what)
    ? 'degrees, 0 to 180, such as 18 or 18.5'
    : units === 'mm'
      ? 'millimetres, such as 65 or 65.5'
      : 'inches, such as 2 9/16 or 2.56';

/** How a field is to be filled in when it cannot be read. */
export const paperProblem = (what: PaperMeasure, units: RulerUnits): string =>
  `Give ${paperExpected(what, units)}.`;

/** What the comparison goes by, with its tolerances: mm on paper, radians. */
export const paperTolerances = (ruler: number, protractor: number, units: RulerUnits): string =>
  `Lengths are compared within ${formatLength(ruler, units, false, 32)}, as finely as a ruler on paper is read; on the garment that is ${formatLength(2 * ruler, units)}. Angles are compared within ${decimal(degrees(protractor), 1)}°, as finely as a protractor is read.`;
