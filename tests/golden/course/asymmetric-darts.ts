import { fail, pass, start, undone, type CourseCase, type Loose } from './case.ts';
import { BUST, MEET, cut, draw, extend, proving, turn } from './support/moves.ts';

const LEFT = 'left/waist-dart';
const LEFT_BUST = { landmark: 'left/bust-point' } as const;
const side = (at = 0.66, to: object = BUST): Loose => draw('right/side', at, to, 'slash-1');
const shoulder = (at = 0.5, to: object = LEFT_BUST): Loose => draw('right/shoulder', at, to, 'slash-2');
const right = (by: object, about: object = BUST, part = 'freed'): Loose => turn(by, about, part, 'slash-1');
const left = (by: object, about: object = LEFT_BUST, part = 'freed'): Loose =>
  turn(by, about, part, 'slash-2', LEFT);
const HALF_WAY = ['dart-moved/residual', 'dart-moved/opening'];

export const CASES: readonly CourseCase[] = [
  start('open-out', ['opened-out/mirror']),
  pass('open-out', 'across-centre-front'),
  pass('open-out', 'and-placed-aside', {
    edit: ({ own }) => [...(own as Loose[]), { do: 'place', piece: 'front', dx: 40, dy: 5, angle: 0.1 }],
  }),
  fail('open-out', ['opened-out/mirror'], 'across-the-side', {
    causes: ['mirrored-about-other-edge'],
    edit: () => [{ do: 'open-out', about: 'right/side' }],
  }),

  start('working-darts', ['darts-extended/tip', 'darts-extended/tip']),
  pass('working-darts', 'both'),
  pass('working-darts', 'left-first', { edit: () => [extend(LEFT_BUST, LEFT), extend(BUST)] }),
  undone('working-darts', 'one-only', { codes: ['darts-extended/tip'], edit: () => [extend(BUST)] }),
  fail('working-darts', ['darts-extended/tip'], 'left-to-its-sewn-point', {
    causes: ['drawn-to-sewn-point'],
    edit: () => [extend(BUST), extend({ landmark: 'left/waist-sewn-point' }, LEFT)],
  }),

  start('slash-lines', ['slash-drawn/drawn', 'slash-drawn/drawn']),
  pass('slash-lines', 'as-shown'),
  pass('slash-lines', 'shoulder-first', { edit: () => [shoulder(0.4), side(0.72)] }),
  undone('slash-lines', 'one-only', { codes: ['slash-drawn/drawn'], edit: () => [side()] }),
  fail('slash-lines', ['slash-drawn/tip'], 'shoulder-line-to-the-right-bust-point', {
    edit: () => [side(), shoulder(0.5, BUST)],
  }),
  fail('slash-lines', ['slash-drawn/edge'], 'from-the-left-shoulder', {
    causes: ['other-edge'],
    edit: () => [side(), draw('left/shoulder', 0.5, LEFT_BUST, 'slash-2')],
  }),

  start('move-right', ['dart-moved/cut']),
  pass('move-right', 'until-the-legs-meet'),
  pass('move-right', 'the-other-part', { edit: () => [cut(0, 'slash-1'), right(MEET, BUST, 'rest')] }),
  fail('move-right', HALF_WAY, 'half-way', {
    causes: ['not-closed'],
    edit: () => [cut(0, 'slash-1'), right({ share: 0.5 })],
  }),
  undone('move-right', 'left-dart-instead', {
    codes: ['dart-moved/cut'],
    edit: () => [cut(0, 'slash-2'), left(MEET)],
  }),

  start('move-left', ['dart-moved/cut']),
  pass('move-left', 'until-the-legs-meet'),
  pass('move-left', 'the-other-part', { edit: () => [cut(0, 'slash-2'), left(MEET, LEFT_BUST, 'rest')] }),
  fail('move-left', HALF_WAY, 'half-way', {
    causes: ['not-closed'],
    edit: () => [cut(0, 'slash-2'), left({ share: 0.6 })],
  }),
  fail('move-left', ['dart-moved/hinge'], '', {
    causes: ['cut-through'],
    edit: () => [cut(3, 'slash-2'), left(MEET)],
  }),

  ...proving().filter(({ name }) => !name.startsWith('fail-')),
];
