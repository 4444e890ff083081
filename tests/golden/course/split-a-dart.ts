import { fail, pass, start, undone, type CourseCase } from './case.ts';
import { BUST, MEET, TYPED, cut, draw, extending, proving, turn } from './support/moves.ts';

const SIDE = 'right/side';
const SHOULDER = 'right/shoulder';
const both = (side = 0.66, shoulder = 0.5) => [
  draw(SIDE, side, BUST, 'slash-1'),
  draw(SHOULDER, shoulder, BUST, 'slash-2'),
];
const cuts = [cut(0, 'slash-1'), cut(0, 'slash-2')];
const into = (slash: string, by: object, part = 'freed') => turn(by, BUST, part, slash);

export const CASES: readonly CourseCase[] = [
  ...extending(),

  start('slash-lines', ['slash-drawn/drawn', 'slash-drawn/drawn']),
  pass('slash-lines', 'side-and-shoulder'),
  pass('slash-lines', 'shoulder-first', { edit: () => both(0.72, 0.4).reverse() }),
  undone('slash-lines', 'one-only', {
    codes: ['slash-drawn/drawn'],
    edit: () => [draw(SIDE, 0.66, BUST, 'slash-1')],
  }),
  fail('slash-lines', ['slash-drawn/edge'], 'neckline-for-the-shoulder', {
    causes: ['other-edge'],
    edit: () => [draw(SIDE, 0.66, BUST, 'slash-1'), draw('right/neckline', 0.5, BUST, 'slash-2')],
  }),
  fail('slash-lines', ['slash-drawn/place'], 'side-too-low', { edit: () => both(0.2) }),

  start('split', ['dart-moved/cut', 'dart-moved/cut']),
  undone('split', 'one-cut', { codes: ['dart-moved/cut'], edit: () => [cut(0, 'slash-1')] }),
  undone('split', 'cut-only', { codes: ['dart-moved/turned'], edit: () => cuts }),
  pass('split', 'half-and-the-rest'),
  pass('split', 'shoulder-first', {
    edit: () => [...cuts, into('slash-2', { share: 0.5 }), into('slash-1', MEET)],
  }),
  pass('split', 'typed-half', {
    edit: () => [...cuts, into('slash-1', { angle: -TYPED / 2 }), into('slash-2', MEET)],
  }),
  pass('split', 'the-other-parts', {
    edit: () => [...cuts, into('slash-1', { share: 0.5 }, 'rest'), into('slash-2', MEET, 'rest')],
  }),
  fail('split', ['dart-moved/opening', 'dart-moved/opening'], 'not-in-halves', {
    edit: () => [...cuts, into('slash-1', { share: 0.3 }), into('slash-2', MEET)],
  }),
  fail('split', ['dart-moved/residual', 'dart-moved/opening'], 'half-of-what-was-left', {
    causes: ['not-closed'],
    edit: () => [...cuts, into('slash-1', { share: 0.5 }), into('slash-2', { share: 0.5 })],
  }),
  fail('split', ['dart-moved/opening', 'dart-moved/opening'], 'all-into-one', {
    edit: () => [...cuts, into('slash-2', MEET)],
  }),

  ...proving(),
];
