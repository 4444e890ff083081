import { nameOf } from './names.ts';
import { later } from './table.ts';

/** What a reading is called of tools that a lesson may begin with: the style line's, drawn either way, and the one for the sewn point. */
export const EARLY_READING: Readonly<Record<string, string>> = {
  passes: 'passes',
  'backed-off': 'from the tip',
  kink: 'kink',
};

/** A point of the style line, counted from 0; `on` is the edge it lies on, if any. */
export const linePoint = (n: string, on: string): string =>
  `line point ${Number(n) + 1}${on === '' ? '' : ` on the ${nameOf(on)}`}`;

/** A place for a new point of the style line. */
export const newLinePoint = (n: string): string => `new line point after point ${Number(n) + 1}`;

// The words of later tools hold these as well: whichever comes first, the larger set stays.
later.reading ??= (id) => EARLY_READING[id];
later.target ??= (id, kind, ref) => {
  const n = id.split(':')[1] ?? '';
  if (kind === 'point') return linePoint(n, ref);
  return kind === 'add' ? newLinePoint(n) : undefined;
};
