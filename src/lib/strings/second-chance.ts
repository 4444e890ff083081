import { skillName, ago } from './practice.ts';

/** What was off, as the end of a sentence, by finding code: what drills can isolate. */
export const MISTAKES: Readonly<Record<string, string>> = {
  'landmarks-found/bust-point': 'the bust point was looked for elsewhere',
  'landmarks-found/dart-upper': 'the upper dart leg was looked for elsewhere',
  'landmarks-found/dart-lower': 'the lower dart leg was looked for elsewhere',
  'landmarks-found/centre-front': 'centre front was looked for elsewhere',
  'landmarks-found/neck-point': 'the neck point was looked for elsewhere',
  'landmarks-found/sewn-point': 'the sewn point of the side dart was looked for elsewhere',
  'landmarks-found/waist-sewn-point': 'the sewn point of the waist dart was looked for elsewhere',
  'landmarks-found/waist-dart-centre': 'the inner leg of the waist dart was looked for elsewhere',
  'landmarks-found/waist-dart-side': 'the outer leg of the waist dart was looked for elsewhere',
  'landmarks-found/neckline': 'the neckline was looked for elsewhere',
  'landmarks-found/shoulder': 'the shoulder seam was looked for elsewhere',
  'landmarks-found/armhole': 'the armhole was looked for elsewhere',
  'landmarks-found/side': 'the side seam was looked for elsewhere',
  'landmarks-found/waist': 'the waist was looked for elsewhere',
  'landmarks-found/shoulder-point': 'the shoulder point was looked for elsewhere',
  'landmarks-found/underarm': 'the underarm was looked for elsewhere',
  'landmarks-found/side-waist': 'the waist corner at the side was looked for elsewhere',
  'landmarks-found/neck-centre': 'the neckline at centre front was looked for elsewhere',
  'landmarks-found/waist-centre': 'the waist at centre front was looked for elsewhere',
  'readings/dart-angle': 'the angle of the dart was misread',
  'readings/leg-length': 'the length of the leg was misread',
  'readings/intake': 'the intake was misread',
  'opened-out/mirror': 'the half was mirrored across another edge',
  'darts-extended/tip': 'the working dart did not end at the bust point',
  'slash-drawn/drawn': 'the line to the bust point could not be drawn',
  'slash-drawn/edge': 'the line to the bust point began on another edge',
  'slash-drawn/place': 'the line to the bust point did not begin at its place on the edge',
  'slash-drawn/tip': 'the slash line did not end at its bust point',
  'slash-drawn/extra': 'there was one line to the bust point too many',
  'slashes-laid/count': 'there were more or fewer slash lines than asked for',
  'slashes-laid/spacing': 'the slash lines were not evenly apart',
  'slashes-laid/parallel': 'the slash lines were not parallel',
  'slashes-laid/pivot': 'the alternate pivot was nearer to the bust point, or farther off, than asked for',
  'dart-moved/cut': 'the way to the bust point could not be opened',
  'dart-moved/turned': 'the dart was not turned',
  'dart-moved/hinge': 'the cut went through the bust point',
  'dart-moved/pivot': 'the parts came apart at the bust point',
  'dart-moved/residual': 'the legs of the dart did not come to lie where they should',
  'dart-moved/opening': 'the opening was wider or narrower than the dart makes it',
  'dart-moved/grain': 'another part was turned',
  'dart-finished/point': 'the dart was backed off farther than asked for, or not far enough',
  'dart-finished/legs': 'the legs of the dart were not equally long',
  'dart-finished/cap': 'the cap was drawn for another fold',
  'dart-finished/graduated': 'the points did not step back evenly',
  'fullness/drawn': 'the opening was not made into fullness',
  'fullness/kind': 'the opening became another kind of fullness',
  'fullness/before': 'the new edge reached farther than asked for before the opening, or not far enough',
  'fullness/after': 'the new edge reached farther than asked for after the opening, or not far enough',
  'fullness/notches': 'a notch was missing at an end of the fullness',
  'fullness/tucks': 'there were more or fewer tucks than asked for',
  'fullness/limit': 'more was eased in than the cloth takes',
  'princess/parted': 'the front could not be parted along the two darts',
  'princess/seam': 'the two edges of the princess seam were not equally long',
  'princess/smooth': 'the smoothing moved the seam too far',
  'princess/reach': 'the seam was not smoothed over the stretch asked for',
  'line-ends/drawn': 'the style line could not be drawn',
  'line-ends/start': 'the style line began on another edge, or not on the edge',
  'line-ends/end': 'the style line ended on another edge, or not on the edge',
  'line-ends/start-place': 'the style line did not begin at its place on the edge',
  'line-ends/end-place': 'the style line did not end at its place on the edge',
  'line-shape/inside': 'the style line left the paper',
  'line-shape/crosses-itself': 'the style line crossed itself',
  'line-shape/meets-dart': 'the style line ran into a dart',
  'line-shape/kink': 'the style line had a break in its direction',
  'line-shape/kinks': 'the stroke broke its direction',
  'line-shape/radius': 'the style line bent too tightly',
  'line-passes/side': 'the style line passed the bust point on the wrong side',
  'line-passes/distance': 'the style line passed the bust point nearer, or farther off, than asked for',
  'line-passes/growth': 'the style line came back towards the bust point',
  'connectors/foot': 'the connector was not the shortest there is',
  'dart-closed/slashed': 'the slash to the dart could not be made',
  'dart-closed/hinge': 'the slash went through the tip of the dart',
  'dart-closed/turned': 'no part was turned',
  'dart-closed/pivot': 'the parts came apart at the bust point',
  'dart-closed/residual': 'the legs of the dart did not meet',
  'dart-closed/opening': 'the opening in the line was wider or narrower than the dart makes it',
  'dart-closed/end': 'the line opened towards its other end',
  'dart-closed/grain': 'another part was turned',
  'separated/pieces': 'the front could not be separated',
  'separated/area': 'paper was lost or doubled',
  'overlaid/shown': 'a piece was not laid on the block',
  'overlaid/fit': 'a piece, closed and laid on the block, did not lie edge on edge',
  'overlaid/coverage': 'an edge of the block was lost',
  'notches-placed/line': 'there was no line to be notched',
  'notches-placed/before-foot': 'the notch above the connector was missing or not at its distance',
  'notches-placed/after-foot': 'the notch below the connector was missing or not at its distance',
  'notches-placed/after-cutting': 'the notches came after the cut',
  'notches-placed/symmetric': 'the notches would let the seam be sewn upside down',
  'notches-placed/count': 'there were more notches than the seam needs',
  'seam-notches/parted': 'there was no parted seam to be notched',
  'seam-notches/bust': 'the notch at the bust point was missing or beside it',
  'seam-notches/beside': 'a notch beside the bust point was missing or not at its distance',
  'leftover/bridged': 'the gap at the connector was not bridged',
  'leftover/smooth': 'the bridge over the gap bent too tightly',
  'leftover/treated': 'the leftover was neither eased in nor taken out',
  'leftover/over-limit': 'more was eased in than the cloth takes',
  'leftover/trim-not-needed': 'something was taken out that the cloth would have eased',
  'leftover/end': 'the leftover was taken out at the other end',
  'leftover/amount': 'another amount was taken out than was left over',
  'leftover/notches': 'the notches of the trimmed stretch missed their partners',
  'leftover/back-trued': 'the back was not trued to the edge that was redrawn',
  'leftover/copy': 'the pieces were not copied for the other cloth',
  'allowances/pieces': 'the seams were not treated before the allowances',
  'allowances/before-truing': 'a seam got its allowance before it was treated',
  'allowances/width': 'an allowance was wider or narrower than asked for',
  'allowances/partners': 'the two edges of a seam got unequal allowances',
  'allowances/corner': 'the allowance at a corner would not lie flush when pressed',
  'allowances/notches': 'the notches were not carried out to the cut line',
  'labels/pieces': 'there were no separate pieces to be labelled',
  'labels/label': 'a piece had no label',
  'labels/name': 'a piece had no name of its own',
  'labels/cut': 'a piece had another number to cut',
  'labels/right-side-up': 'a piece that has no second half was not marked right side up',
  'labels/on-fold': 'the label of a half piece did not say rightly whether its centre lies on the fold',
  'grain/drawn': 'a piece had no grainline',
  'grain/void': 'a piece had lost its grain',
  'grain/on-piece': 'a grainline lay beside its piece',
  'grain/direction': 'a grainline did not run along centre front',
  'walked/done': 'a seam was not walked',
  'walked/along': 'a seam was walked on its cut lines',
  'walked/says': 'what was said of a walked seam did not hold',
  'walked/difference': 'the two edges of a walked seam did not agree',
  'sliver/rest': 'an edge changed that no treatment should change',
  'angle-kept/sum': 'the angle round the bust point was not that of the block',
  'sliver/area': 'the sliver that was lost was not as large as predicted',
};

/** What can have happened to several things alike: said once of all of them. */
const ALIKE = [
  [' was looked for elsewhere', ' were looked for elsewhere'],
  [' was misread', ' were misread'],
] as const;

/** The same with what happened to several things said of them together, in the place of the first. */
function together(said: readonly string[]): readonly string[] {
  const joined = said.map((words) => {
    const alike = ALIKE.find(([one]) => words.endsWith(one));
    if (!alike) return words;
    const [one, several] = alike;
    const things = said.filter((other) => other.endsWith(one)).map((other) => other.slice(0, -one.length));
    return things.length < 2 ? words : `${things.slice(0, -1).join(', ')} and ${things.at(-1)}${several}`;
  });
  return [...new Set(joined)];
}

/** Codes in words, joined as the end of a sentence. */
export const mistakeWords = (codes: readonly string[]): string => {
  const said = together([...new Set(codes.map((code) => MISTAKES[code] ?? 'something was off'))]);
  return said.length < 2 ? (said[0] ?? '') : `${said.slice(0, -1).join(', ')}, and ${said.at(-1)}`;
};

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

/** Where and when a mistake was made. `title`: of the lesson, where it is known; a drill has none. `since`: days. */
export const whereMade = (
  skill: string,
  kind: 'lesson' | 'drill',
  title: string | undefined,
  since: number,
) =>
  `${kind === 'drill' ? 'In a drill' : title === undefined ? 'In a lesson' : `In the lesson “${title}”`}, ${ago(since)}: ${skillName(skill)}.`;

export const SECOND_CHANCE = {
  heading: 'Second chances',
  about: 'For what was off, the smallest drill that isolates it. Done right, it restores the credit.',
  link: 'A short drill for this',
  more: (n: number): string => `${n === 1 ? 'One more waits' : `${n} more wait`} behind these.`,
  gone: 'This mistake is made good already, or this device knows nothing of it.',
  what: (codes: readonly string[]): string => capital(mistakeWords(codes)),
  line: (codes: readonly string[]): string => `Second chance for: ${mistakeWords(codes)}.`,
  /** `now`: what the mark itself says is off; `before`: what an earlier mark of the same go said. */
  linked: (now: readonly string[], before: readonly string[]): string => {
    const others = before.filter((code) => !now.some((one) => MISTAKES[one] === MISTAKES[code]));
    const earlier = others.length === 0 ? '' : `On the way ${mistakeWords(others)}. `;
    const said = now.length === 0 ? '' : `${capital(mistakeWords(now))}. `;
    return `${said}${earlier}`.trim();
  },
  restores: 'Doing it right restores the credit.',
  /** Where a mark has several, each with a drill of its own. */
  each: 'Each has its own short drill; doing it right restores the credit for it.',
  /** Said where the mistake was made. `still`: the work lies there as it did. */
  restoredHere: (codes: readonly string[], still: boolean): string =>
    `Your short drill was right, so the credit is restored for what was off here: ${mistakeWords(codes)}.${still ? ' On this table it is still to be mended.' : ''}`,
  restored: (codes: readonly string[]): string =>
    `The credit is restored for what was off before: ${mistakeWords(codes)}.`,
  shown: 'The solution was shown in this drill, so the credit waits: it comes back by your own hand.',
  unfinished: 'Not every step is accepted, so the credit waits. Go back to the flagged step.',
  toLesson: 'Back to that step of the lesson',
  toDrill: 'Back to that drill',
  another: 'Another short drill for this',
} as const;

/** Help that was taken before a mark; nothing where there was none. */
export function helpWords(hints: number, worked: boolean): string {
  const counted = hints === 0 ? '' : hints === 1 ? 'With 1 hint' : `With ${hints} hints`;
  if (!worked) return counted === '' ? '' : `${counted}.`;
  return counted === '' ? 'After seeing it worked.' : `${counted}, after seeing it worked.`;
}

/** How much of an occasion was made good by second chances. */
export const madeGoodWords = (restored: number, mistakes: number): string =>
  restored === 0
    ? ''
    : restored === mistakes
      ? ', made good by a second chance'
      : `, ${restored} of ${mistakes} made good by a second chance`;
