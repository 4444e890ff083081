import { dartName, nameOf, pieceName, theDart } from './names.ts';

const OPTION: Readonly<Record<string, string>> = {
  what: 'This is',
  part: 'Turn',
  width: 'Width',
  form: 'Corner',
  first: 'Sewn first',
  seam: 'Seam',
  along: 'Walk on',
  fold: 'Folded',
  as: 'Becomes',
  tucks: 'Tucks',
  dart: 'Close',
  into: 'Open',
  share: 'Share',
  still: 'Trace first',
  circle: 'Circle round B',
};
export const optionWords = (id: string): string => OPTION[id] ?? id;

const CHOICE: Readonly<Record<string, string>> = {
  'bust-point': 'the bust point',
  'what:dart-upper': 'the upper dart leg',
  'what:dart-lower': 'the lower dart leg',
  'what:centre-front': 'centre front',
  'neck-point': 'the neck point',
  freed: 'the freed part',
  rest: 'the rest',
  mitre: 'mitred',
  square: 'squared off',
  reflect: 'mirrored in the first seam',
  step: 'stepped',
  before: 'the first named',
  after: 'the second named',
  'first:style-line': 'the style line',
  'along:seam': 'the seam line',
  'along:cut': 'the cut line',
  'fold:centre': 'to centre front',
  'fold:side': 'to the side',
  'as:ease': 'ease',
  'still:centre': 'centre front',
  'still:side': 'the side',
};
export const choiceWords = (option: string, value: string): string =>
  option === 'dart' || option === 'into'
    ? theDart(value)
    : (CHOICE[`${option}:${value}`] ?? CHOICE[value] ?? nameOf(value));

/** How far something is turned, by the share of the dart that closes. */
const howFar = (share: string): string =>
  share === '1' ? 'until the legs meet' : `to close ${Number((100 * Number(share)).toFixed(1))} %`;

const ACT: Readonly<Record<string, (about: string) => string>> = {
  meet: (dart) => `Turn until the ${dart} legs meet`,
  turn: (share) => `Turn ${howFar(share)}`,
  swing: (share) => `Swing ${howFar(share)}`,
  separate: () => 'Cut apart along the line',
  overlay: (piece) => `Lay the ${pieceName(piece.replace(/@.*/, ''))} on the block`,
  copy: (fabric) => `Copy the pieces for a ${fabric}`,
  bridge: (dart) => `Bridge the ${dart} opening`,
  true: (edge) => `True the ${nameOf(edge)}`,
  carry: (piece) => `Carry out: ${pieceName(piece.replace(/@.*/, ''))}`,
  legs: (dart) => `Make the legs of ${theDart(dart)} alike`,
  cap: (dart) => `Cap ${theDart(dart)}`,
  fullness: (dart) => `Draw over ${theDart(dart)}`,
  part: (darts) => `Cut apart at ${darts.split('+').map(theDart).join(' and ')}`,
  'says:match': () => 'They match',
  'says:eased': () => 'They match but for the ease',
  'says:differs': () => 'They differ',
};
/** Words on a tool's button; `id` is `kind:...`. */
export const actWords = (id: string, about = ''): string =>
  (ACT[id] ?? ACT[id.split(':')[0] ?? ''])?.(about) ?? id;

const READING: Readonly<Record<string, string>> = {
  passes: 'passes',
  kink: 'kink',
  connector: '',
  along: '',
  'to-tip': 'to the tip',
  gap: 'gap',
  opened: 'opened',
  'from-bust': 'from B',
  'off-grain': 'off centre front',
  leftover: 'leftover',
  reach: '',
  'backed-off': 'from the tip',
  legs: 'differ by',
  fullness: 'fullness',
  moved: 'moved',
  'off-parallel': 'off parallel',
};
/** What a live measure is called; `id` is its kind, or `kind:...`. */
export function readingWords(id: string): string {
  const [kind = '', about = ''] = id.split(':');
  // To the end of an edge, by the point of the block that is there.
  return kind === 'from-end' ? nameOf(about).replace(/^(left|right) /, '') : (READING[kind] ?? '');
}

/** What a target is called, by its kind and what it stands for. */
export function targetWords(id: string, kind: string, ref = '', dart = ''): string {
  const [head = '', second = ''] = id.split(':');
  const side = dart === '' ? '' : `${nameOf(dart)} `;
  const isSlash = dart !== '' && !/^(left|right)(\/|$)/.test(dart);
  switch (kind) {
    case 'tip':
      if (head === 'tip' && isSlash) return `tip of ${theDart(dart)}`;
      return head === 'foot' ? `foot of the ${side}connector` : `point of the ${side}dart`;
    case 'scissors':
      return `scissors for ${theDart(dart)}`;
    case 'turn':
      return `leg of ${ref === 'freed' ? 'the freed part' : 'the rest'}, ${dartName(dart)}`;
    case 'pin':
      return dart === 'right' || dart === 'left'
        ? `pin at the ${side}bust point`
        : `pin at the point of ${theDart(dart)}`;
    case 'point':
      if (head === 'mark') return `mark on the ${nameOf(ref)}`;
      if (isSlash) return slashWords(head, theDart(dart), ref);
      return ref === ''
        ? `line point ${Number(second) + 1}`
        : `line point ${Number(second) + 1} on the ${nameOf(ref)}`;
    case 'add':
      if (isSlash) return `bend ${theDart(dart)} here`;
      return head === 'new'
        ? `new notch near the ${side}bust point`
        : `new line point after point ${Number(second) + 1}`;
    case 'notch':
      return `notch ${ref}`;
    case 'piece':
      return pieceName(ref);
    case 'handle':
      return handleWords(head, second, ref, dart);
    default:
      return nameOf(ref);
  }
}

/** Handles of a slash line that is drawn. */
const slashWords = (head: string, slash: string, ref: string): string =>
  head === 'from'
    ? `start of ${slash} on the ${nameOf(ref)}`
    : head === 'via'
      ? `alternate pivot of ${slash}`
      : `end of ${slash}`;

function handleWords(head: string, piece: string, ref: string, dart: string): string {
  const side = dart === '' ? '' : `${nameOf(dart)} `;
  if (head === 'before' || head === 'after')
    return `bridge of the ${side}opening, ${head === 'before' ? 'near' : 'far'} end`;
  if (head === 'over') return `new edge, ${ref === 'before' ? 'start' : 'end'}, ${dartName(dart)}`;
  if (head === 'mouth') return `opening of ${theDart(dart)}`;
  if (head === 'smooth') return `corner at the ${nameOf(ref)}, ${pieceName(piece)}`;
  if (head === 'end') return `${ref} of the style seam, ${pieceName(piece)}`;
  if (head === 'grain') return `grainline, ${pieceName(ref)}`;
  if (head === 'foot') return `foot of the ${side}connector`;
  const [before = '', after = ''] = ref.split('>');
  return `corner of ${nameOf(before)} and ${nameOf(after)}, ${pieceName(piece)}`;
}

export const TABLE = {
  title: 'Drafting table',
  keys: 'Tab moves among the handles. Enter takes one up or chooses it; arrow keys move it by 1 mm at half scale, with Shift by 10, with Alt by a tenth; Enter puts it down, Escape lets it go, Delete takes it away. Plus, minus and 0 zoom.',
  zoomIn: 'Nearer',
  zoomOut: 'Farther',
  fit: 'Show all',
  right: 'wearer’s right',
  left: 'wearer’s left',
  bust: 'B',
  busts: { 'right/bust-point': 'B1', 'left/bust-point': 'B2' } as Readonly<Record<string, string>>,
  done: 'done',
  held: 'held',
  placed: 'Put down.',
  letGo: 'Let go; nothing changed.',
  takenUp: (what: string) => `${what} taken up.`,
  refusedNow: 'Not possible here',
  set: 'Pieces for',
  cloths: { knit: 'a knit', woven: 'a stable woven' },
  added: 'added',
  taken: 'taken off',
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
