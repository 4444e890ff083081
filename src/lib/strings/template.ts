import { madeDart, nameOf, partNames, pieceName, theDart, theMadeDart } from './names.ts';
import { decimal, formatLength, type Units } from './units.ts';

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What may stand in braces of a template: names of things, and plain values. */
export function filled(
  template: string,
  about: Readonly<Record<string, string | number>>,
  units: Units,
): string {
  // A side dart is called so where the dart is meant; what else belongs to one is told by its side.
  const { dart } = about;
  const named =
    typeof dart === 'string' && /^(right|left|(new|slash)(-\d+)?)$/.test(dart)
      ? template
          .replace(/^The \{dart\} dart/, capital(theMadeDart(dart)))
          .replaceAll('the {dart} dart', theMadeDart(dart))
          .replaceAll('{dart} dart', madeDart(dart))
      : template;
  return named.replace(/\{(\w+)\}/g, (_, key: string) => {
    const value = about[key];
    if (value === undefined) return '';
    if (key === 'mm' || key === 'room' || key === 'amount') return formatLength(Number(value), units);
    // Where the cloth is named, the copy need not be.
    if (key === 'piece') return pieceName(about['fabric'] ? String(value).replace(/@.*/, '') : String(value));
    if (key === 'open' || key === 'slash') return theDart(String(value));
    if (key === 'stays')
      return ` Here ${theMadeDart(String(value))} was closed: in this step it is to stay as it is`;
    if (key === 'instead') return ` Here ${theMadeDart(String(value))} was drawn up, which is another one.`;
    if (key === 'reached') return `, drawn to the ${nameOf(String(value))}`;
    if (key === 'part') return partNames(String(value));
    if (key === 'fold') return FOLDS[value] ?? String(value);
    if (key === 'made') return MADE[value] ?? String(value);
    if (key === 'says') return SAYS[value] ?? String(value);
    if (typeof value === 'number') return decimal(value, 1);
    return NAMED.has(key) ? nameOf(value) : value;
  });
}

/** These are ids of edges, lines, landmarks, darts, seams or groups; other texts stand as they are. */
const NAMED = new Set([
  'edge',
  'wanted',
  'seam',
  'group',
  'before',
  'after',
  'line',
  'landmark',
  'dart',
  'what',
  'kind',
]);

/** Which way a dart is pressed. */
const FOLDS: Readonly<Record<string, string>> = {
  centre: 'towards the centre',
  side: 'towards the side',
  up: 'upwards',
  down: 'downwards',
};

/** What leads from an edge to a bust point, by how it was made: where the block was pinned and swung, no paper is cut. */
const MADE: Readonly<Record<string, string>> = { slash: 'slash line', pivot: 'new dart' };

const SAYS: Readonly<Record<string, string>> = {
  match: 'it matches',
  eased: 'it matches but for what is eased',
  differs: 'it differs',
};
