/** Ends of a dart's way, as the ids of skills name them. */
const ENDS: Readonly<Record<string, string>> = {
  side: 'side seam',
  'low-side': 'low side seam',
  'mid-armhole': 'middle of the armhole',
  'centre-front': 'centre front',
  'style-line': 'style line',
  'neck-rays': 'rays from the neck',
};
/** Where the name of a place tells the seam, and another dart goes into it than the one that begins it. */
const PLACES: Readonly<Record<string, string>> = {
  'waist-to-shoulder-line': 'Side dart into the shoulder princess line',
  'waist-to-armhole-line': 'Side dart into the armhole princess line',
  'waist-to-near-line': 'Side dart into the line near the bust point',
};
/** Where a dart goes that does not go to one place. */
const INTO: Readonly<Record<string, string>> = {
  two: 'two darts',
  parallel: 'parallel darts',
  'parallel-darts': 'parallel darts',
  cluster: 'a cluster of darts',
  rays: 'rays from the neck',
  'neck-rays': 'rays from the neck',
  fullness: 'fullness at an edge',
  edge: 'fullness at an edge',
  'style-line': 'a style line',
};
const FROM: Readonly<Record<string, string>> = { both: 'Both darts', side: 'Side dart', waist: 'Waist dart' };

const METHODS: Readonly<Record<string, string>> = {
  slash: 'slash and spread',
  pivot: 'pin and pivot',
  angle: 'by a typed angle',
  drawn: 'drawn in its place',
};
const FINISHINGS: Readonly<Record<string, string>> = {
  'backed-off': 'backed off',
  cap: 'with its folded cap',
  gathers: 'into gathers',
  tucks: 'into tucks',
  ease: 'eased in',
  princess: 'as a princess seam',
};
/** Skills of one word, where the word alone would not say it. */
const PLAIN: Readonly<Record<string, string>> = {
  'read-block': 'Reading the block',
  'read-the-block': 'Reading the block',
  'open-out': 'Opening out the half',
  'style-line': 'Drawing a style line',
  notches: 'Marking notches',
  'working-dart': 'Drawing the working dart',
  connector: 'Connecting a line to the bust point',
  'move-dart': 'Moving a dart',
  separate: 'Separating the pieces',
  leftover: 'Treating the leftover',
  allowance: 'Adding allowances',
  'label-grain': 'Labels and grain',
  'walk-seams': 'Walking the seams',
  'make-ready': 'Making the pieces ready to be sewn',
  'close-and-overlay': 'Closing and overlaying',
  'prove-fit': 'Proving that the fit is kept',
};

const own = (list: Readonly<Record<string, string>>, key: string): string | undefined =>
  Object.hasOwn(list, key) ? list[key] : undefined;
const words = (id: string): string => id.replaceAll('-', ' ');
const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

function placeName(place: string): string {
  const seam = own(PLACES, place);
  if (seam !== undefined) return seam;
  const [, from, to] = /^([a-z-]+?)-to-([a-z-]+)$/.exec(place) ?? [];
  if (from === undefined || to === undefined)
    return place === 'waist' || place === 'side' ? FROM[place]! : words(place);
  const start = own(FROM, from) ?? `${capital(words(from))} dart`;
  const into = own(INTO, to);
  return into === undefined ? `${start} to the ${own(ENDS, to) ?? words(to)}` : `${start} into ${into}`;
}

/** What a skill is called, from its id; one that is not known by the words of its id. Plain text. */
export function skillName(skill: string): string {
  const [place = '', method, finishing, more] = skill.split('/');
  if (method === undefined) return own(PLAIN, skill) ?? capital(words(skill));
  const rest = [own(METHODS, method) ?? words(method)];
  if (finishing !== undefined && finishing !== 'plain')
    rest.push(own(FINISHINGS, finishing) ?? words(finishing));
  if (more !== undefined) rest.push(words(more));
  return `${capital(placeName(place))}, ${rest.join(', ')}`;
}

/** Why something is due: code and numbers of `practice/due.ts`. */
export interface DueFacts {
  readonly reason: string;
  readonly since: number;
  readonly overdue: number;
  readonly recall: number;
  readonly hints: number;
}

/** Days ago in words: today, yesterday, 5 days ago. */
export const ago = (days: number): string =>
  days <= 0 ? 'today' : days === 1 ? 'yesterday' : `${days} days ago`;

const counted = (n: number, one: string): string => `${n} ${n === 1 ? one : `${one}s`}`;

/** Why a skill is due, in a sentence or two. */
export function dueReason({ reason, since, overdue, recall, hints }: DueFacts): string {
  const when = ago(since);
  const why: Readonly<Record<string, string>> = {
    'went-wrong': `Last tried ${when}, and it did not come right.`,
    shown: `Last done ${when}, after the solution was shown: now by your own hand.`,
    helped: `Last done ${when} with ${counted(hints, 'hint')}.`,
    fading: `Last done ${when}. By now it would come right about ${Math.round(10 * recall)} times in 10.`,
  };
  const late = overdue <= 0 ? '' : ` ${dueFor(overdue)}`;
  return (own(why, reason) ?? `Last done ${when}.`) + late;
}

/** How an occasion went, by its rating (`practice/rating.ts`). */
export const RATINGS: Readonly<Record<string, string>> = {
  again: 'not yet by your own hand',
  hard: 'right, with effort',
  good: 'right',
  easy: 'right, exact and quick',
};

/** How a mark came out. */
export const VERDICTS: Readonly<Record<string, string>> = {
  accepted: 'accepted',
  needsWork: 'needs work',
  notReady: 'not ready',
};

/** When a skill comes next, in days from today. */
export const inDays = (days: number): string =>
  days <= 0 ? 'today' : days === 1 ? 'tomorrow' : `in ${days} days`;
/** Since when it is due, in days. */
const dueFor = (days: number): string => (days === 1 ? 'Due since yesterday.' : `Due for ${days} days.`);
/** When a skill comes again, or since when it is due: below 0 that many days ago. */
export const comesAgain = (days: number): string =>
  days < 0 ? dueFor(-days) : `Comes again ${inDays(days)}.`;

/** A time at work: 45 s, 3 min, 1 h 20 min. */
export function formatTime(seconds: number): string {
  if (seconds < 60) return `${Math.round(seconds)} s`;
  const minutes = Math.floor(seconds / 60 + 0.5);
  if (minutes < 60) return `${minutes} min`;
  const rest = minutes % 60;
  return `${Math.floor(minutes / 60)} h${rest > 0 ? ` ${rest} min` : ''}`;
}

/** Why nothing is kept (`StorageFailure` of progress/store.ts). */
export const UNKEPT = {
  forbidden:
    'This browser does not let the app keep anything: what you practise is forgotten with this page.',
  full: 'The storage of this device is full: what you practise from here on is forgotten with this page.',
  otherVersion:
    'This app is open in another tab in another version. Close that tab and load this page again; until then what you practise is forgotten with this page.',
} as const;

/** Where a step of a lesson is to be practised once more. */
export const ANEW = {
  lies: 'You came to practise this step. What lies here is your earlier work: checking it as it is does not count as practice.',
  empty: 'Empty this step and work it anew',
  emptied: 'The step is empty. Until you leave this page, Undo brings your earlier work back.',
} as const;
