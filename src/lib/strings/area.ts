import { decimal, INCH, rulerOf, sign, sizeOf, type Units } from './units.ts';

/** An area in cm² or square inches. */
export function formatArea(mm2: number, units: Units, signed = false): string {
  const metric = rulerOf(units) === 'mm';
  const value = Math.abs(mm2 / (metric ? 100 : INCH * INCH)) / sizeOf(units) ** 2;
  const text = decimal(value, 2) === '0' && value > 1e-9 ? 'under 0.01' : decimal(value, 2);
  return `${sign(mm2 < 0, signed)}${text} ${metric ? 'cm²' : 'sq in'}`;
}
