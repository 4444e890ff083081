import { EARLY_READING, linePoint, newLinePoint } from './early-words.ts';
import { dartName, dartOn, madeDart, nameOf, pieceName, theDart, theMadeDart } from './names.ts';
import { later } from './table.ts';

const OPTION: Readonly<Record<string, string>> = {
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
  circle: 'Circle round the bust point',
};

const CHOICE: Readonly<Record<string, string>> = {
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

/** How far something is turned, by the share of the dart that closes. */
const howFar = (share: string): string =>
  share === '1' ? 'until the legs meet' : `to close ${Number((100 * Number(share)).toFixed(1))} %`;

/** `slash-2@right/neckline` -> "new dart 2 (right neckline)". */
function madeOn(about: string): string {
  const [dart = '', edge] = about.split('@');
  return dartOn(theMadeDart(dart), edge);
}

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
  legs: (dart) => `Make the legs of ${madeOn(dart)} alike`,
  cap: (dart) => `Cap ${madeOn(dart)}`,
  fullness: (dart) => `Draw over ${madeOn(dart)}`,
  part: (darts) => `Cut apart at ${darts.split('+').map(theMadeDart).join(' and ')}`,
  'says:match': () => 'They match',
  'says:eased': () => 'They match but for the ease',
  'says:differs': () => 'They differ',
};

const READING: Readonly<Record<string, string>> = {
  ...EARLY_READING,
  connector: '',
  along: '',
  'to-tip': 'to the tip',
  gap: 'gap',
  opened: 'opened',
  overlap: 'overlap',
  'off-grain': 'off centre front',
  leftover: 'leftover',
  reach: '',
  legs: 'differ by',
  fullness: 'fullness',
  moved: 'moved',
  'off-parallel': 'off parallel',
};
function targetWords(id: string, kind: string, ref: string, dart: string): string | undefined {
  const [head = '', second = ''] = id.split(':');
  const side = dart === '' ? '' : `${nameOf(dart)} `;
  const isSlash = dart !== '' && !/^(left|right)(\/|$)/.test(dart);
  switch (kind) {
    case 'tip':
      if (head === 'tip' && isSlash) return `tip of ${theMadeDart(dart)}`;
      return head === 'foot' ? `foot of the ${side}connector` : `point of the ${side}dart`;
    case 'scissors':
      return `scissors for ${theDart(dart)}${ref === '' ? '' : `, from the ${nameOf(ref)}`}`;
    case 'turn':
      return `leg of ${ref === 'freed' ? 'the freed part' : 'the rest'}, ${dartName(dart)}`;
    case 'pin':
      return dart === 'right' || dart === 'left'
        ? `pin at the ${side}bust point`
        : `pin at the point of ${theMadeDart(dart)}`;
    case 'point':
      if (head === 'mark') return `mark on the ${nameOf(ref)}`;
      if (isSlash) return slashWords(head, theDart(dart), ref);
      return linePoint(second, ref);
    case 'add':
      if (isSlash) return `bend ${theDart(dart)} here`;
      return head === 'new' ? `new notch near the ${side}bust point` : newLinePoint(second);
    case 'notch':
      return `notch ${ref}`;
    case 'handle':
      return handleWords(head, second, ref, dart);
    default:
      return undefined;
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
  if (head === 'over') return `new edge, ${ref === 'before' ? 'start' : 'end'}, ${madeDart(dart)}`;
  if (head === 'mouth') return `opening of ${theMadeDart(dart)}`;
  if (head === 'smooth') return `corner at the ${nameOf(ref)}, ${pieceName(piece)}`;
  if (head === 'end') return `${ref} of the style seam, ${pieceName(piece)}`;
  if (head === 'grain') return `grainline, ${pieceName(ref)}`;
  if (head === 'foot') return `foot of the ${side}connector`;
  const [before = '', after = ''] = ref.split('>');
  return `corner of ${nameOf(before)} and ${nameOf(after)}, ${pieceName(piece)}`;
}

later.option = (id) => {
  const [kind = '', dart] = id.split(':');
  // Each dart has its own, where they cannot all be folded alike.
  return kind === 'fold' && dart !== undefined ? `Fold ${theMadeDart(dart)}` : OPTION[kind];
};
later.choice = (option, value, on) =>
  option === 'dart'
    ? dartOn(theMadeDart(value), on)
    : option === 'into'
      ? dartOn(theDart(value), on)
      : (CHOICE[`${option.split(':')[0]}:${value}`] ?? CHOICE[value]);
later.act = (id, about) => (ACT[id] ?? ACT[id.split(':')[0] ?? ''])?.(about);
later.reading = (id) => {
  const [kind = '', about = ''] = id.split(':');
  // To the end of an edge, by the point of the block that is there.
  return kind === 'from-end' ? nameOf(about).replace(/^(left|right) /, '') : READING[kind];
};
later.target = targetWords;
