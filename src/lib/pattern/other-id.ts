/** The id of the mirror image: `right/…` becomes `left/…`; anything else gains `left/`. */
export function otherId(id: string): string {
  const known = others.get(id);
  if (known !== undefined) return known;
  const other = id.startsWith('right/') ? `left/${id.slice(6)}` : `left/${id}`;
  // As a key it is made one string for good, not two that hang together.
  if (others.size < NAMES) others.set(id, Object.keys({ [other]: 0 })[0]!);
  return other;
}

// The names on a block are few and always the same. Each twin's is made once: one and the same string is quicker to look up, and to
// compare, than one put together anew.
const NAMES = 100;
const others = new Map<string, string>();
