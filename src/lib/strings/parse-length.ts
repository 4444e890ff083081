import { INCH, MINUS, rulerOf, sizeOf, type Units } from './units.ts';

/**
 * Reads a length that a person typed, in mm at full size: "12,5", "12.5 mm", "1 3/16 in", "5/8\"", "2 cm"; a bare number is taken in `units`, any
 * as one on their paper.
 * undefined when it is no length.
 */
export function parseLength(text: string, units: Units): number | undefined {
  const found =
    /^\s*([+−-]?)\s*(?:(\d+(?:[.,]\d+)?)(?:[\s-]+(\d+)\/(\d+))?|(\d+)\/(\d+))\s*(mm|cm|in|inch|inches|"|″)?\s*$/i.exec(
      text,
    );
  if (!found) return undefined;
  const [, minus, whole, top, below, soloTop, soloBelow, unit] = found;
  const fraction = Number(top ?? soloTop ?? 0) / Number(below ?? soloBelow ?? 1);
  const value = Number((whole ?? '0').replace(',', '.')) + fraction;
  if (!Number.isFinite(value)) return undefined;
  const given = unit?.toLowerCase() ?? rulerOf(units);
  const size = given === 'mm' ? 1 : given === 'cm' ? 10 : INCH;
  return (minus === '-' || minus === MINUS ? -1 : 1) * value * size * sizeOf(units);
}
