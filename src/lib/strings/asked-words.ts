import type { CheckSpec } from '../grading/types.ts';
import { nameOf } from './names.ts';
import { decimal, formatLength, type Units } from './units.ts';

/** The names of a check under one key: one or several. */
export function ids(spec: CheckSpec, key: string): readonly string[] {
  const found: unknown = spec.names?.[key];
  return typeof found === 'string' ? [found] : Array.isArray(found) ? found.map(String) : [];
}

/** "a", "a and b", "a, b and c". */
export const joined = (parts: readonly string[]): string =>
  parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;

/** An edge, seam or landmark with its article, which centre front has none of. */
export const the = (id: string): string => (id === 'centre-front' ? '' : 'the ') + nameOf(id);

/** The numbers `least` and `most` for the i-th of several, or for all. */
export const numbersOf = ({ numbers }: CheckSpec, i?: number) => ({
  least: numbers?.[`least-${(i ?? 0) + 1}`] ?? numbers?.['least'],
  most: numbers?.[`most-${(i ?? 0) + 1}`] ?? numbers?.['most'],
});

export const percent = (share: number): string => `${decimal(100 * share, 0)} %`;

/** A range of lengths: "15 mm to 25 mm"; one length where both ends are the same, "up to" from nothing. */
export function span(spec: CheckSpec, units: Units, i?: number): string {
  const { least = 0, most = 0 } = numbersOf(spec, i);
  const [low, high] = [formatLength(least, units), formatLength(most, units)];
  if (least === 0) return `up to ${high}`;
  return least === most ? low : `${low} to ${high}`;
}
