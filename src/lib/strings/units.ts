import { degrees } from '../geometry/trig.ts';

/** What a ruler is read in. */
export type RulerUnits = 'mm' | 'inch';
/** How lengths are shown and typed, at full size or as they are on half-scale paper; inside everything is mm at full size. */
export type Units = RulerUnits | `half ${RulerUnits}`;

/** The units in which an exercise is worked whose lengths are given at that scale. */
export const unitsAt = (scale: 'half' | 'full' | undefined, units: RulerUnits): Units =>
  scale === 'half' ? `half ${units}` : units;
/** What its lengths are read in, whatever the paper. */
export const rulerOf = (units: Units): RulerUnits => (units.endsWith('mm') ? 'mm' : 'inch');
/** How often a length that is shown goes into that of the garment. */
export const sizeOf = (units: Units): 1 | 2 => (units.startsWith('half') ? 2 : 1);

/** mm. */
export const INCH = 25.4;
const SIXTEENTHS = 16;
/** A real minus, so that a signed number is not read as a range. */
export const MINUS = '−';

export const sign = (negative: boolean, signed: boolean): string => (negative ? MINUS : signed ? '+' : '');

/** A number with at most `places` (0, 1 or 2) decimals and no idle zeros: 9.50 -> "9.5". */
export function decimal(value: number, places: number): string {
  const grain = places === 0 ? 1 : places === 1 ? 10 : 100;
  // Halves go up, also those that binary numbers hold a hair too small (6.35).
  const text = (Math.floor(Math.abs(value) * grain + 0.5 + 1e-9) / grain).toFixed(places);
  const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return sign(value < 0 && Number(short) !== 0, false) + short;
}

/** Sixteenths (or other parts of two) in lowest terms: 17 -> "1 1/16", 8 -> "1/2". */
function fraction(count: number, parts: number): string {
  const whole = Math.floor(count / parts);
  let top = count - whole * parts;
  if (top === 0) return String(whole);
  let below = parts;
  while (top % 2 === 0) {
    top /= 2;
    below /= 2;
  }
  return `${whole > 0 ? `${whole} ` : ''}${top}/${below}`;
}

/**
 * A length (mm at full size) in the learner's units: "12.7 mm", "1/2 in". Inches go to the nearest sixteenth; what is smaller than half of
 * that, yet not nothing, is said to be under 1/32 in. `signed` writes a plus before lengths above zero; `given` are the
 * parts of an inch of the garment where sixteenths are too coarse (a power of two).
 */
export function formatLength(full: number, units: Units, signed = false, given = SIXTEENTHS): string {
  const mm = full / sizeOf(units);
  const parts = given * sizeOf(units);
  if (rulerOf(units) === 'mm') {
    const text = decimal(Math.abs(mm), 1);
    if (text === '0') return Math.abs(mm) > 1e-6 && Math.abs(mm) < 0.05 ? 'under 0.1 mm' : '0 mm';
    return `${sign(mm < 0, signed)}${text} mm`;
  }
  const count = Math.floor((Math.abs(mm) / INCH) * parts + 0.5);
  if (count === 0) return Math.abs(mm) < 0.05 ? '0 in' : `under 1/${2 * parts} in`;
  return `${sign(mm < 0, signed)}${fraction(count, parts)} in`;
}

/** An angle in degrees, to a tenth. */
export function formatAngle(radians: number, signed = false): string {
  const text = decimal(Math.abs(degrees(radians)), 1);
  return text === '0' ? '0°' : `${sign(radians < 0, signed)}${text}°`;
}
