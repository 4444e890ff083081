const WORDS: Readonly<Record<string, string>> = {
  'centre-front': 'centre front',
  'neck-centre': 'neckline at centre front',
  'waist-centre': 'waist at centre front',
  'back/neck-centre': 'back neckline at centre back',
  'back/waist-centre': 'back waist at centre back',
  'side-upper': 'side seam above the dart',
  'side-lower': 'side seam below the dart',
  side: 'side seam',
  shoulder: 'shoulder seam',
  'dart-upper': 'upper dart leg',
  'dart-lower': 'lower dart leg',
  'side-waist': 'waist corner at the side',
  'sewn-point': 'point of the sewn dart',
  'dart-upper-end': 'end of the upper dart leg',
  'dart-lower-end': 'end of the lower dart leg',
  // Followed by the word dart wherever it is said.
  'waist-dart': 'waist',
  'waist-inner': 'waist towards centre front',
  'waist-outer': 'waist towards the side',
  'waist-dart-centre': 'waist dart leg towards centre front',
  'waist-dart-side': 'waist dart leg towards the side',
  'waist-dart-centre-end': 'end of the waist dart leg towards centre front',
  'waist-dart-side-end': 'end of the waist dart leg towards the side',
  'waist-sewn-point': 'point of the sewn waist dart',
  'style-line': 'style line',
  line: 'style line',
  princess: 'princess',
  'princess-left': 'left princess',
};

/** A plain name for an edge, landmark, seam or seam group id: `right/side-upper.1` -> "right side seam above the dart, part 1". */
export function nameOf(id: string): string {
  const [path = id, ...pieces] = id.split('.');
  const bank = /^(line|princess|princess-left)\/(\d+)\/[ab]$/.exec(path);
  const connector = /^connector-(left|right)(\/[ab])?$/.exec(path);
  const leg = /^([^/]+)\/([ab])$/.exec(path);
  const words = bank
    ? `${bank[1] === 'line' ? 'style line' : 'princess line'}, interval ${bank[2]}`
    : connector
      ? `${connector[1]} connector`
      : leg
        ? `${isNew(leg[1]!) ? dartName(leg[1]!) : nameOf(leg[1]!)}, leg ${leg[2]}`
        : (WORDS[path] ??
          path
            .split('/')
            .map((word) => WORDS[word] ?? word.replaceAll('-', ' '))
            .join(' '));
  return words + (pieces.length > 0 ? `, part ${pieces.join('.')}` : '');
}

/** Darts that were made with the pin, without a cut, are called so. */
const isNew = (id: string): boolean => /^new(-\d+)?$/.test(id);

/**
 * A dart or slash by its name: `right` -> "right side dart", `slash` -> "slash", `slash-1` -> "slash 1", `neck` -> "neck slash", `new` ->
 * "new dart", `new-1` -> "new dart 1".
 */
export function dartName(id: string): string {
  if (id === 'right' || id === 'left') return `${id} side dart`;
  if (/^(right|left)\//.test(id)) return `${nameOf(id)} dart`;
  if (isNew(id)) return id.replace('new', 'new dart').replace('-', ' ');
  return /^slash(-|$)/.test(id) ? nameOf(id) : `${nameOf(id)} slash`;
}
/** The same with its article, which "slash 1" has none of. */
export const theDart = (id: string): string => (/^(slash|new)-/.test(id) ? '' : 'the ') + dartName(id);

/** What a slash opened into is a new dart, whatever it is still called by its commands: `slash-1` -> `new-1`. */
export const openedId = (id: string): string => id.replace(/^slash(?=-\d|$)/, 'new');
/** A dart that is finished or closed, by its name: `slash` -> "new dart", `slash-1` -> "new dart 1", else as `dartName`. */
export const madeDart = (id: string): string => dartName(openedId(id));
/** The same with its article. */
export const theMadeDart = (id: string): string => theDart(openedId(id));

/** A dart or slash that only has a number, by the edge that it begins on as well: "slash 2 (right neckline)". */
export const dartOn = (name: string, edge: string | undefined): string =>
  edge === undefined ? name : `${name} (${nameOf(edge)})`;

/** `upper` -> "upper piece", `lower@woven` -> "lower piece (woven copy)". */
export function pieceName(id: string): string {
  const [base = id, copy] = id.split('@');
  const name =
    base === 'upper' || base === 'lower'
      ? `${base} piece`
      : base.replace(/^back-(\w+)$/, 'back, $1 half').replace(/^front-([\w-]+)$/, 'front, $1 piece');
  return copy === undefined ? name : `${name} (${copy} copy)`;
}

/** Alone, a part that a slash or the pin freed is the only one of its kind, whatever the slash is called. */
const freedPart = (of: string): string => (/^(slash|new)(-\d+)?$/.test(of) ? 'freed part' : freedAt(of));
const freedAt = (of: string): string => `part freed at ${theDart(of)}`;

/** `freed-right` -> "freed right part", `upper` -> "main part"; several ids with commas between give several names. */
export function partNames(ids: string): string {
  const all = ids.split(', ');
  const alone = all.length === 1;
  const names = all.map((id) =>
    !id.startsWith('freed-') ? 'main part' : alone ? freedPart(id.slice(6)) : freedAt(id.slice(6)),
  );
  return alone ? names[0]! : `${names.slice(0, -1).join(', the ')} and the ${names.at(-1)!}`;
}
