import { nameOf, pieceName } from './names.ts';

/** The words of tools that come with a later phase (`tool-words.ts`); until that is fetched nothing on the table needs them. */
export const later: {
  option?: (id: string) => string | undefined;
  /** What is pointed out (`thing-words.ts`, with the tool for it). */
  thing?: (what: string) => string | undefined;
  choice?: (option: string, value: string, on?: string) => string | undefined;
  act?: (id: string, about: string) => string | undefined;
  reading?: (id: string) => string | undefined;
  target?: (id: string, kind: string, ref: string, dart: string) => string | undefined;
} = {};

/** What a live measure is called; `id` is its kind, or `kind:...`. */
export const readingWords = (id: string): string =>
  id === 'from-bust' ? 'from B' : id === 'taken-up' ? 'taken up:' : (later.reading?.(id) ?? '');

/** What a target is called, by its kind and what it stands for. */
export function targetWords(id: string, kind: string, ref = '', dart = ''): string {
  const other = later.target?.(id, kind, ref, dart);
  if (other !== undefined) return other;
  if (kind === 'piece') return pieceName(ref);
  return kind === 'tip' ? `point of the ${nameOf(dart)} dart` : nameOf(ref);
}

export const TABLE = {
  title: 'Drafting table',
  zoomIn: 'Nearer',
  zoomOut: 'Farther',
  fit: 'Show all',
  right: 'wearer’s right',
  left: 'wearer’s left',
  bust: 'B',
  busts: { 'right/bust-point': 'B1', 'left/bust-point': 'B2' } as Readonly<Record<string, string>>,
  letGo: 'Let go; nothing changed.',
  marked: (where: string) => `Marked: ${where}.`,
  takenUp: (what: string) => `${what} taken up.`,
  refusedNow: 'Not possible here',
};

/** Where a point lies on the front, for those who cannot see it; mm already in the learner's units. */
export const placeWords = (
  across: string,
  side: 'left' | 'right' | 'centre',
  height: string,
  above: boolean,
  level: boolean,
): string =>
  `${side === 'centre' ? 'on centre front' : `${across} to the wearer’s ${side} of centre front`}, ${level ? 'on the bust line' : `${height} ${above ? 'above' : 'below'} the bust line`}`;
