import type { Command, Label } from '../../../src/lib/recipe/types.ts';
import {
  both,
  changing,
  drawnBackwards,
  fail,
  pass,
  start,
  unfinished,
  without,
  type Before,
  type Case,
} from '../case.ts';

const LEFT = 'leftover';
const ALLOW = 'allowances';
const LABEL = 'label-and-grain';
const WALK = 'walk-the-seams';

const woven = { fabric: 'woven' } as const;
const isWoven = (c: { piece: string }) => c.piece.endsWith('@woven');
const dropped = (...kinds: readonly Command['do'][]) => without((c) => kinds.includes(c.do));
/** The group's allowance on some pieces. */
const wide = (width: number, group: RegExp, piece = /./) =>
  changing(
    'allow',
    (c) => ({ ...c, width }),
    (c) => group.test(c.group) && piece.test(c.piece),
  );
const SEAMS = /style-line|shoulder|side/;
/** The label of the back, or of both of its halves. */
const back = (said: Partial<Label>) =>
  changing(
    'label',
    (c) => ({ ...c, ...said }),
    (c) => c.piece.startsWith('back'),
  );
/** Centre back has no allowance, and so lies on the fold. */
const folded = (commands: readonly Command[]): readonly Command[] =>
  commands.map((c) => (c.do === 'allow' && c.group === 'centre-back' ? { ...c, width: 0 } : c));

/** What is easing for the knit becomes taking out, and the other way round. */
const takeOut = (c: { piece: string; dart: string }): Command => ({
  do: 'take-out',
  piece: c.piece,
  dart: c.dart,
  end: c.dart === 'right' ? 'start' : 'end',
  amount: 'measured',
});

/** Turned angle of the part that the right dart freed, on the lower piece. */
const turnedBy = ({ work }: Before): number => {
  const part = work.pieces.find((p) => p.id === 'lower')!.parts.find((p) => p.grain === 'void')!;
  return Math.atan2(part.motion.b, part.motion.a);
};

export const FINISHED: readonly Case[] = [
  start(LEFT, ['leftover/bridged', 'leftover/bridged', 'leftover/copy']),
  pass(LEFT, 'eased-and-taken-out'),
  pass(LEFT, 'woven', woven),
  pass(LEFT, 'near-line', { variations: { d1: 11, d2: 12 } }),
  pass(LEFT, 'large-figure', { figure: 'F5', variations: { d1: 20, d2: 22 } }),
  pass(LEFT, 'separated-first', { variations: { separateFirst: true } }),
  pass(LEFT, 'rest-turned', { variations: { turn: 'rest' } }),
  pass(LEFT, 'line-drawn-backwards', { earlier: drawnBackwards, edit: ({ own }) => drawnBackwards(own) }),
  pass(LEFT, 'wide-blend', { edit: changing('bridge', (c) => ({ ...c, before: 28, after: 30 })) }),
  pass(LEFT, 'woven-little-excess-eased', {
    // At 10 mm from a small figure's bust point the excess stays within what even a woven takes up.
    figure: 'F1',
    variations: { d1: 10, d2: 10 },
    edit: ({ own }) =>
      own
        .filter((c) => !(['take-out', 'true', 'renotch'] as string[]).includes(c.do))
        .flatMap((c): readonly Command[] =>
          c.do === 'ease' ? [c, { ...c, piece: `${c.piece}@woven` }] : [c],
        )
        .sort((a, b) => Number(a.do === 'ease') - Number(b.do === 'ease')),
  }),
  unfinished(LEFT, ['leftover/copy'], 'no-copy', {
    edit: without((c) => ('piece' in c && isWoven(c)) || c.do === 'copy' || c.do === 'true'),
  }),
  unfinished(LEFT, ['leftover/treated', 'leftover/treated'], 'bridged-only', {
    edit: without((c) => c.do === 'ease'),
  }),
  unfinished(LEFT, ['leftover/notches', 'leftover/notches'], 'not-renotched', { edit: dropped('renotch') }),
  unfinished(LEFT, ['leftover/back-trued', 'leftover/back-trued'], 'back-not-trued', {
    edit: dropped('true'),
  }),
  fail(LEFT, ['leftover/back-trued', 'leftover/back-trued'], 'before-taking-out', {
    edit: ({ own }) => [
      ...own.filter((c) => c.do === 'copy' || c.do === 'true'),
      ...own.filter((c) => c.do !== 'copy' && c.do !== 'true'),
    ],
  }),
  fail(LEFT, ['leftover/over-limit', 'leftover/over-limit'], 'woven-eased', {
    edit: ({ own }) =>
      own.flatMap((c): readonly Command[] => {
        if (c.do === 'true' || c.do === 'renotch') return [];
        if (c.do !== 'take-out') return [c];
        const ease = own.find((e) => e.do === 'ease' && e.dart === c.dart) as Extract<
          Command,
          { do: 'ease' }
        >;
        return [{ ...ease, piece: c.piece }];
      }),
  }),
  fail(LEFT, ['leftover/trim-not-needed', 'leftover/trim-not-needed'], 'knit-trimmed', {
    edit: ({ own }) =>
      own.flatMap((c): readonly Command[] => {
        if (c.do !== 'ease') return [c];
        const notch = c.dart === 'right' ? 'n1' : 'n4';
        const edge = c.dart === 'right' ? 'right/shoulder' : 'left/side';
        return [takeOut(c), { do: 'true', edge, as: 'knit' }, { do: 'renotch', piece: c.piece, notch }];
      }),
  }),
  fail(LEFT, ['leftover/amount'], 'too-much', {
    causes: ['too-much-taken'],
    edit: changing(
      'take-out',
      (c) => ({ ...c, amount: 12 }),
      (c) => c.dart === 'right',
    ),
  }),
  fail(LEFT, ['leftover/amount'], 'too-little', {
    causes: ['too-little-taken'],
    edit: changing(
      'take-out',
      (c) => ({ ...c, amount: 1 }),
      (c) => c.dart === 'left',
    ),
  }),
  fail(LEFT, ['leftover/end', 'leftover/amount'], 'other-end', {
    causes: ['too-little-taken'],
    edit: both(
      changing(
        'take-out',
        (c) => ({ ...c, end: 'end' }),
        (c) => c.dart === 'right',
      ),
      without((c) => c.do === 'renotch' && c.piece.startsWith('lower')),
    ),
  }),
  fail(LEFT, ['leftover/notches'], 'marked-wrong', {
    edit: changing(
      'renotch',
      (c) => ({ ...c, at: 170 }),
      (c) => c.notch === 'n1',
    ),
  }),
  fail(LEFT, ['leftover/smooth', 'leftover/smooth', 'leftover/smooth', 'leftover/smooth'], 'no-blend', {
    edit: changing('bridge', (c) => ({ ...c, before: 0, after: 0 })),
  }),

  start(ALLOW, [
    ...Array<string>(18).fill('allowances/width'),
    ...Array<string>(4).fill('allowances/corner'),
    ...Array<string>(2).fill('allowances/notches'),
  ]),
  pass(ALLOW, 'knit-metric'),
  pass(ALLOW, 'woven-metric', woven),
  pass(ALLOW, 'knit-inches', {
    edit: both(wide(9.525, SEAMS), wide(6.35, /neckline|armhole/), wide(25.4, /waist/)),
  }),
  pass(ALLOW, 'woven-inches', {
    ...woven,
    edit: both(wide(15.875, SEAMS), wide(6.35, /neckline|armhole/), wide(25.4, /waist/)),
  }),
  pass(ALLOW, 'bound-neck-and-armholes', { edit: wide(0, /neckline|armhole/) }),
  pass(ALLOW, 'corners-squared', {
    edit: changing('corner', (c) => (c.form === 'reflect' ? { ...c, form: 'square' } : c)),
  }),
  pass(ALLOW, 'only-the-style-corners', {
    edit: without((c) => c.do === 'corner' && c.before !== 'style-line' && c.after !== 'style-line'),
  }),
  unfinished(
    ALLOW,
    ['allowances/corner', 'allowances/corner', 'allowances/corner', 'allowances/corner'],
    'no-corners',
    {
      edit: dropped('corner'),
    },
  ),
  unfinished(ALLOW, ['allowances/notches', 'allowances/notches'], 'notches-not-carried', {
    edit: dropped('carry-notches'),
  }),
  unfinished(ALLOW, ['allowances/pieces'], 'not-separated', {
    earlier: (commands) => commands.filter((c) => c.do !== 'separate'),
  }),
  fail(ALLOW, Array<string>(10).fill('allowances/width'), 'half-scale', {
    causes: Array<string>(10).fill('scale-mixed'),
    edit: wide(4.7625, SEAMS),
  }),
  fail(ALLOW, Array<string>(10).fill('allowances/width'), 'knit-as-woven', { edit: wide(15.875, SEAMS) }),
  fail(ALLOW, ['allowances/partners'], 'style-line', {
    edit: both(wide(10.4, /style-line/, /upper/), wide(9, /style-line/, /lower/)),
  }),
  fail(
    ALLOW,
    ['allowances/partners', 'allowances/partners', 'allowances/width', 'allowances/width'],
    'back-narrower',
    {
      edit: both(wide(6, /back.shoulder/), wide(6, /back.side/)),
    },
  ),
  fail(ALLOW, ['allowances/corner'], 'parallel', {
    causes: ['corner-not-flush'],
    edit: changing(
      'corner',
      ({ first: _, ...c }) => ({ ...c, form: 'mitre' }),
      (c) =>
        c.piece === 'lower' &&
        [c.before, c.after].includes('style-line') &&
        /shoulder/.test(c.before + c.after),
    ),
  }),
  fail(
    ALLOW,
    ['allowances/corner', 'allowances/corner', 'allowances/corner', 'allowances/corner'],
    'shoulder-first',
    {
      causes: Array<string>(4).fill('wrong-seam-first'),
      edit: changing(
        'corner',
        (c) => ({ ...c, first: c.before === 'style-line' ? c.after : c.before }),
        (c) => [c.before, c.after].includes('style-line'),
      ),
    },
  ),
  fail(ALLOW, ['allowances/before-truing', 'allowances/before-truing'], '', {
    earlier: (commands) => commands.filter((c) => c.step !== LEFT),
  }),
  // Where centre back has no allowance it lies on the fold (common practice): only the back as drafted serves for both halves.
  pass(ALLOW, 'centre-back-on-the-fold', { edit: wide(0, /centre-back/) }),
  fail(ALLOW, ['allowances/width', 'allowances/width'], 'halves-of-the-back-on-the-fold', {
    ...woven,
    causes: ['halves-differ', 'halves-differ'],
    edit: wide(0, /centre-back/),
  }),

  start(LABEL, ['labels/label', 'labels/label', 'labels/label', 'grain/drawn', 'grain/drawn']),
  pass(LABEL, 'knit'),
  pass(LABEL, 'woven', woven),
  pass(LABEL, 'rest-turned', { variations: { turn: 'rest' } }),
  pass(LABEL, 'grain-upside-down', { edit: changing('grain', (c) => ({ ...c, angle: Math.PI })) }),
  pass(LABEL, 'back-on-the-fold', {
    edit: changing(
      'label',
      (c) => ({ ...c, cut: 1 }),
      (c) => c.piece === 'back',
    ),
  }),
  pass(LABEL, 'every-part-turned', {
    // The upper piece has no part left that kept its grain: any one line will do.
    earlier: (commands) =>
      commands.map((c) => (c.do === 'turn' && c.dart === 'right' ? { ...c, part: 'rest' } : c)),
    edit: changing(
      'grain',
      (c) => ({ ...c, angle: 0.5 }),
      (c) => c.piece === 'upper',
    ),
  }),
  unfinished(LABEL, ['labels/pieces'], 'not-separated', {
    earlier: (commands) => commands.filter((c) => c.do !== 'separate'),
  }),
  unfinished(LABEL, ['grain/drawn'], 'one-grain', {
    edit: without((c) => c.do === 'grain' && c.piece === 'upper'),
  }),
  fail(LABEL, ['labels/cut'], 'two', {
    edit: changing(
      'label',
      (c) => ({ ...c, cut: 2 }),
      (c) => c.piece === 'upper',
    ),
  }),
  fail(LABEL, ['labels/cut', 'labels/cut'], 'halves-of-the-back-twice', {
    // Trued each by itself, the halves of the back differ: two of each would make two backs.
    ...woven,
    edit: changing(
      'label',
      (c) => ({ ...c, cut: 2 }),
      (c) => c.piece.startsWith('back'),
    ),
  }),
  fail(LABEL, ['labels/right-side-up', 'labels/right-side-up'], '', {
    edit: changing('label', (c) => ({ ...c, rightSideUp: false })),
  }),
  fail(LABEL, ['labels/name', 'labels/name'], 'twice-the-same', {
    edit: changing(
      'label',
      (c) => ({ ...c, name: 'Front' }),
      (c) => c.piece !== 'back',
    ),
  }),
  pass(LABEL, 'fold-at-centre-back', { earlier: folded, edit: back({ cut: 1, onFold: true }) }),
  fail(LABEL, ['labels/on-fold'], 'not-said', { earlier: folded, edit: back({ cut: 1 }) }),
  fail(LABEL, ['labels/on-fold', 'labels/cut'], 'a-pair-without-a-seam', { earlier: folded }),
  fail(LABEL, ['labels/cut'], 'two-on-the-fold', { earlier: folded, edit: back({ cut: 2, onFold: true }) }),
  fail(LABEL, ['labels/on-fold'], 'sewn-at-the-centre', {
    causes: ['centre-is-sewn'],
    edit: back({ cut: 1, onFold: true }),
  }),
  fail(LABEL, ['labels/on-fold', 'labels/on-fold'], 'halves-that-differ', {
    ...woven,
    causes: ['no-second-half', 'no-second-half'],
    edit: back({ onFold: true }),
  }),
  fail(LABEL, ['grain/direction'], 'copied-from-the-turned-part', {
    causes: ['copied-from-turned-part'],
    edit: changing(
      'grain',
      (c, before) => ({ ...c, angle: turnedBy(before) }),
      (c) => c.piece === 'lower',
    ),
  }),
  fail(LABEL, ['grain/on-piece'], 'beside-the-piece', {
    edit: changing(
      'grain',
      (c) => ({ ...c, at: { landmark: 'right/neck-point', dx: -200, dy: -200 } }),
      (c) => c.piece === 'upper',
    ),
  }),
  fail(LABEL, ['grain/direction'], 'slanting', {
    edit: changing(
      'grain',
      (c) => ({ ...c, angle: 0.06 }),
      (c) => c.piece === 'upper',
    ),
  }),

  start(WALK, Array<string>(5).fill('walked/done')),
  pass(WALK, 'knit'),
  pass(WALK, 'woven', woven),
  pass(WALK, 'line-drawn-backwards', { ...woven, earlier: drawnBackwards }),
  pass(WALK, 'shoulder-called-eased', {
    edit: changing(
      'walk',
      (c) => ({ ...c, says: 'eased' }),
      (c) => c.seam.endsWith('shoulder'),
    ),
  }),
  pass(WALK, 'walked-twice', {
    edit: ({ own }) => [
      ...own.map((c) => (c.do === 'walk' ? { ...c, along: 'cut' as const, says: 'differs' as const } : c)),
      ...own,
    ],
  }),
  unfinished(WALK, ['walked/done'], 'one-seam-left', {
    edit: without((c) => c.do === 'walk' && c.seam === 'left/side'),
  }),
  fail(WALK, ['walked/along'], 'cut-line', {
    causes: ['cut-line-walked'],
    edit: changing(
      'walk',
      (c) => ({ ...c, along: 'cut', says: 'differs' }),
      (c) => c.seam === 'style-line',
    ),
  }),
  fail(WALK, ['walked/says'], 'ease-not-seen', {
    edit: changing(
      'walk',
      (c) => ({ ...c, says: 'match' }),
      (c) => c.seam === 'style-line',
    ),
  }),
  fail(WALK, ['walked/says'], 'side-differs', {
    edit: changing(
      'walk',
      (c) => ({ ...c, says: 'differs' }),
      (c) => c.seam === 'right/side',
    ),
  }),
  fail(WALK, ['walked/difference'], 'too-much-taken-out', {
    ...woven,
    earlier: (commands) =>
      commands.map((c) => (c.do === 'take-out' && c.dart === 'right' ? { ...c, amount: 14 } : c)),
    edit: changing(
      'walk',
      (c) => ({ ...c, says: 'differs' }),
      (c) => c.seam === 'style-line',
    ),
  }),
];
