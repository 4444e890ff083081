import { fail, pass, start, undone, type CourseCase, type Loose } from '../case.ts';
import { BUST, DART, MEET, cut, draw, extend, turn } from './moves.ts';

const SIDE = 'right';
const smooth = (piece: string, reach: number): Loose => ({
  do: 'smooth-seam',
  piece,
  at: 'right/bust-point',
  reach,
});
const notch = (id: string, off: number): Loose => ({ do: 'notch-seam', id, line: 'princess', off });
const closed = (by: object = MEET, about: object = BUST, part = 'freed'): Loose[] => [
  cut(),
  turn(by, about, part, 'slash', SIDE),
];

/** Attempts at a princess line whose upper part begins on `edge`: the rows extend, slash, pivot and separate of the mistakes table of trade.md. */
export const princess = (edge: string, otherEdge: string, tooLong: readonly string[]): CourseCase[] => [
  start('working-darts', ['darts-extended/tip', 'darts-extended/tip']),
  pass('working-darts', 'both'),
  pass('working-darts', 'waist-first', { edit: () => [extend(BUST), extend(BUST, SIDE)] }),
  undone('working-darts', 'waist-only', { codes: ['darts-extended/tip'], edit: () => [extend(BUST)] }),

  start('slash-line', ['slash-drawn/drawn']),
  pass('slash-line', 'as-shown'),
  pass('slash-line', 'elsewhere-in-the-stretch', { edit: () => [draw(edge, 0.4)] }),
  fail('slash-line', ['slash-drawn/edge'], 'from-another-edge', {
    causes: ['other-edge'],
    edit: () => [draw(otherEdge, 0.5)],
  }),
  fail('slash-line', ['slash-drawn/tip'], 'beside-the-bust-point', {
    edit: () => [draw(edge, 0.5, { ...BUST, dx: 7, dy: -9 })],
  }),

  start('close-side-dart', ['dart-moved/cut']),
  undone('close-side-dart', 'cut-only', { codes: ['dart-moved/turned'], edit: () => [cut()] }),
  pass('close-side-dart', 'until-the-legs-meet'),
  pass('close-side-dart', 'the-other-part', { edit: () => closed(MEET, BUST, 'rest') }),
  fail('close-side-dart', ['dart-moved/residual', 'dart-moved/opening'], 'half-way', {
    causes: ['not-closed'],
    edit: () => closed({ share: 0.5 }),
  }),
  undone('close-side-dart', 'waist-dart-instead', {
    codes: ['dart-moved/turned'],
    edit: () => [cut(), turn(MEET, BUST, 'freed', 'slash', DART)],
  }),

  start('cut-apart', ['princess/parted']),
  pass('cut-apart', 'slash-and-waist-dart'),
  pass('cut-apart', 'waist-dart-and-slash', {
    edit: () => [{ do: 'part-at-darts', darts: [DART, 'slash'] } as Loose],
  }),

  start('smooth', ['princess/smooth', 'princess/smooth']),
  undone('smooth', 'one-piece-only', {
    codes: ['princess/smooth'],
    edit: () => [smooth('front-side', 30)],
  }),
  pass('smooth', 'as-shown'),
  pass('smooth', 'side-first-and-shorter', {
    edit: () => [smooth('front-side', 22), smooth('front-centre', 22)],
  }),
  fail('smooth', tooLong, 'reach-too-long', {
    edit: () => [smooth('front-side', 110), smooth('front-centre', 30)],
  }),

  start('notches', ['seam-notches/bust', 'seam-notches/beside', 'seam-notches/beside']),
  pass('notches', 'as-shown'),
  pass('notches', 'unequal-and-one-more', {
    edit: () => [notch('n1', -62), notch('n2', 38), notch('n3', 0), notch('n4', -70)],
  }),
  undone('notches', 'bust-point-only', {
    codes: ['seam-notches/beside', 'seam-notches/beside'],
    edit: () => [notch('n1', 0)],
  }),
  fail('notches', ['seam-notches/bust'], 'beside-the-bust-point', {
    edit: () => [notch('n1', 8), notch('n2', 45), notch('n3', -45)],
  }),
  fail('notches', ['seam-notches/beside'], 'too-far-off', {
    edit: () => [notch('n1', 0), notch('n2', 45), notch('n3', -95)],
  }),
];
