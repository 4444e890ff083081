import { oneString } from './one-string.ts';

/** The id of the mirror image: `right/…` becomes `left/…`; anything else gains `left/`. */
export function otherId(id: string): string {
  const known = others.get(id);
  if (known !== undefined) return known;
  const other = id.startsWith('right/') ? `left/${id.slice(6)}` : `left/${id}`;
  if (others.size < NAMES) others.set(id, oneString(other));
  return other;
}

// The names on a block are few and always the same: each twin's is made once.
const NAMES = 100;
const others = new Map<string, string>();
