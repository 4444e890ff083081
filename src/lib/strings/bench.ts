import type { Leftover } from '../grading/bench/leftover.ts';
import type { SeamPair } from '../grading/bench/seam-pairs.ts';
import type { BlockChoice } from '../recipe/types.ts';
import { dartName, nameOf } from './names.ts';
import { formatLength, type Units } from './units.ts';

/** The parts of the work, as the bench calls them. */
export const GROUP_NAMES = {
  read: 'Read',
  open: 'Open and lay out',
  line: 'Line',
  darts: 'Darts',
  cut: 'Cut and turn',
  finish: 'Finish',
} as const;

/** The papers that a work may begin on. */
export const PAPERS = {
  opened: 'Whole front, opened out',
  half: 'Half front, to be opened out',
  side: 'Half front, side dart',
  'two-dart': 'Half front, side dart and waist dart',
  waist: 'Half front, waist dart',
} as const;
export type Paper = keyof typeof PAPERS;

/** A block in words. */
export function blockWords(block: BlockChoice): string {
  const body = 'figure' in block ? `figure ${block.figure}` : 'own measures';
  const forms = { side: 'side dart', 'two-dart': 'two darts', waist: 'waist dart' } as const;
  return block.form === undefined ? body : `${body}, half front, ${forms[block.form]}`;
}

export const commandsWords = (count: number): string =>
  count === 0 ? 'nothing done yet' : count === 1 ? 'one thing done' : `${count} things done`;

/** What a work without a name is called. */
export const UNNAMED = 'Unnamed work';

const LEFT: Readonly<Record<Leftover['kind'], string>> = {
  open: 'still open',
  bridged: 'bridged',
  eased: 'eased in',
  trimmed: 'taken out at the end',
  gathers: 'gathered',
  ease: 'eased over the opening',
  tucks: 'laid in tucks',
};

export const leftoverWords = ({ kind }: Leftover): string => LEFT[kind];

/** What is sewn together in a pair. */
export function pairName({ kind, id }: SeamPair): string {
  if (kind === 'legs') return `${dartName(id)}, its two legs`;
  return nameOf(id);
}

/** What the two lengths of a pair come to; lengths of less than `nothing` mm are none. */
export function pairWords({ difference, meant, worst }: SeamPair, units: Units, nothing = 0.005): string {
  const none = (mm: number): boolean => Math.abs(mm) < nothing;
  if (none(difference) && none(worst)) return 'alike';
  const apart = `${formatLength(difference, units, true)} apart`;
  if (none(worst)) return `${apart}, as it is meant to be`;
  if (none(difference - meant)) return `alike in all, ${formatLength(worst, units, true)} between two marks`;
  return none(meant) ? apart : `${apart}, ${formatLength(meant, units, true)} of it as it is meant to be`;
}

/** Two lengths with their unit once, where both have the same: "169.7 and 170.2 mm". */
export function bothLengths(a: number, b: number, units: Units): string {
  const [one, other] = [formatLength(a, units), formatLength(b, units)];
  const unit = units === 'mm' ? ' mm' : ' in';
  const short = one.endsWith(unit) && other.endsWith(unit) ? one.slice(0, -unit.length) : one;
  return `${short} and ${other}`;
}
