/** What a drill is a second chance for: the mistakes, each by the id of its mark and its code. */
export type Remembered = readonly { readonly of: string; readonly code: string }[];

const keyOf = (drill: string): string => `pin-and-pivot:second-chance:${drill}`;
/** Where the browser keeps nothing, it lasts as long as the page. */
const page = new Map<string, Remembered>();

const isOne = (one: unknown): boolean =>
  typeof one === 'object' &&
  one !== null &&
  typeof (one as Record<string, unknown>)['of'] === 'string' &&
  typeof (one as Record<string, unknown>)['code'] === 'string';

/** Remembers for this tab, by the id of the drill's lesson: its link has no room for it. */
export function rememberChance(drill: string, mistakes: Remembered): void {
  page.set(drill, mistakes);
  try {
    sessionStorage.setItem(keyOf(drill), JSON.stringify(mistakes));
  } catch {
    // The page remembers.
  }
}

/** What a drill is a second chance for in this tab; undefined for any other drill. */
export function rememberedChance(drill: string): Remembered | undefined {
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(keyOf(drill)) ?? 'null');
    if (Array.isArray(kept) && kept.length > 0 && kept.every(isOne)) return kept as Remembered;
  } catch {
    // The page remembers.
  }
  return page.get(drill);
}
