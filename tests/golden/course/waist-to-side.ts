import type { Loose } from './case.ts';
import { fail, pass, start, undone } from './case.ts';

const DART = 'right/waist-dart';
const BUST = { landmark: 'right/bust-point' } as const;
const extend = (to: object): Loose[] => [{ do: 'extend-dart', dart: DART, to } as Loose];
const draw = (on: string, at: number, to: object = BUST, slash = 'slash'): Loose =>
  ({ do: 'draw-slash', slash, from: { on, at }, to }) as Loose;
const cut = (past = 0): Loose => ({ do: 'cut-slash', slash: 'slash', past });
const turn = (by: object, about: object = BUST, part = 'freed'): Loose =>
  ({ do: 'turn', dart: DART, into: 'slash', part, about, by }) as Loose;
const MEET = { until: 'legs-meet' };
/** A degree more than F2's dart (18.5°, B/4 − 2.5 for bust 84, memory), in radians, as a learner reads it off a protractor; the side part turns against the clock. */
const TYPED = -0.3403392041388943;

export const CASES = [
  start('working-dart', ['darts-extended/tip']),
  pass('working-dart', 'to-the-bust-point'),
  pass('working-dart', 'a-pencil-line-off', { edit: () => extend({ ...BUST, dx: 1.2 }) }),
  fail('working-dart', ['darts-extended/tip'], 'to-the-sewn-point', {
    causes: ['drawn-to-sewn-point'],
    edit: () => extend({ landmark: 'right/waist-sewn-point' }),
  }),
  fail('working-dart', ['darts-extended/tip'], 'beside', { edit: () => extend({ ...BUST, dx: 6, dy: 3 }) }),

  start('slash-line', ['slash-drawn/drawn']),
  pass('slash-line', 'a-third-down'),
  pass('slash-line', 'higher', { edit: () => [draw('right/side', 0.78)] }),
  pass('slash-line', 'drawn-twice', { edit: () => [draw('right/shoulder', 0.5), draw('right/side', 0.6)] }),
  fail('slash-line', ['slash-drawn/edge'], 'from-the-shoulder', {
    causes: ['other-edge'],
    edit: () => [draw('right/shoulder', 0.5)],
  }),
  fail('slash-line', ['slash-drawn/place'], 'too-low', { edit: () => [draw('right/side', 0.2)] }),
  fail('slash-line', ['slash-drawn/tip'], 'to-the-sewn-point-of-the-side', {
    edit: () => [draw('right/side', 0.68, { ...BUST, dx: -25, dy: 4 })],
  }),
  fail('slash-line', ['slash-drawn/extra'], '', {
    edit: ({ own }) => [...(own as Loose[]), draw('right/side', 0.6, BUST, 'second')],
  }),

  start('move', ['dart-moved/cut']),
  undone('move', 'cut-only', { codes: ['dart-moved/turned'], edit: () => [cut()] }),
  pass('move', 'until-the-legs-meet'),
  pass('move', 'the-other-part', { edit: () => [cut(), turn(MEET, BUST, 'rest')] }),
  pass('move', 'typed-angle', { edit: ({ own }) => [own[0] as Loose, turn({ angle: TYPED })] }),
  pass('move', 'pinned-and-traced', {
    earlier: (commands) => commands.filter((c) => c.do !== 'draw-slash'),
    edit: () => [
      {
        do: 'pivot',
        dart: DART,
        slash: 'slash',
        from: { on: 'right/side', at: 0.68 },
        about: BUST,
        by: MEET,
        part: 'freed',
      } as Loose,
    ],
  }),
  fail('move', ['dart-moved/hinge'], '', { causes: ['cut-through'], edit: () => [cut(4), turn(MEET)] }),
  fail('move', ['dart-moved/pivot', 'dart-moved/residual', 'dart-moved/opening'], 'slipped', {
    causes: ['pivot-slipped', 'pivot-slipped'],
    edit: () => [cut(), turn(MEET, { ...BUST, dx: 14, dy: 9 })],
  }),
  fail('move', ['dart-moved/residual', 'dart-moved/opening'], 'not-far-enough', {
    causes: ['not-closed'],
    edit: () => [cut(), turn({ angle: -0.25 })],
  }),
  fail('move', ['dart-moved/residual', 'dart-moved/opening'], 'wrong-way', {
    causes: ['wrong-way'],
    edit: () => [cut(), turn({ angle: -TYPED })],
  }),

  start('prove', ['overlaid/shown']),
  pass('prove', 'on-the-block'),
  pass('prove', 'after-turning-the-rest', {
    earlier: (commands) => commands.map((c) => (c.do === 'turn' ? { ...c, part: 'rest' } : c)),
  }),
];
