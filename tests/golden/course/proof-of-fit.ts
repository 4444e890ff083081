import { fail, pass, start, undone, type CourseCase } from './case.ts';
import { BUST, DART, MEET, cut, draw, extend, proving, turn } from './support/moves.ts';

const SIDE = 'right';
/** 18.5° (bust 84: B/4 − 2.5, memory), half of it in the side (ours), in radians. */
const HALF = 0.161442955809475;

export const CASES: readonly CourseCase[] = [
  start('working-darts', ['darts-extended/tip', 'darts-extended/tip']),
  pass('working-darts', 'both'),
  pass('working-darts', 'waist-first', { edit: () => [extend(BUST), extend(BUST, SIDE)] }),
  undone('working-darts', 'one-only', { codes: ['darts-extended/tip'], edit: () => [extend(BUST)] }),
  fail('working-darts', ['darts-extended/tip'], 'side-dart-beside', {
    edit: () => [extend(BUST), extend({ ...BUST, dx: -6 }, SIDE)],
  }),

  start('slash-line', ['slash-drawn/drawn']),
  pass('slash-line', 'middle'),
  pass('slash-line', 'nearer-to-the-neck', { edit: () => [draw('right/shoulder', 0.68)] }),
  fail('slash-line', ['slash-drawn/edge'], 'from-the-neckline', {
    causes: ['other-edge'],
    edit: () => [draw('right/neckline', 0.4)],
  }),
  fail('slash-line', ['slash-drawn/extra'], 'one-line-for-each-dart', {
    edit: () => [draw('right/shoulder', 0.5), draw('right/shoulder', 0.4, BUST, 'slash-2')],
  }),

  start('move-both', ['dart-moved/cut']),
  undone('move-both', 'side-dart-only', {
    codes: ['dart-moved/turned'],
    edit: () => [cut(), turn(MEET, BUST, 'freed', 'slash', SIDE)],
  }),
  pass('move-both', 'side-dart-first'),
  pass('move-both', 'waist-dart-first', {
    edit: () => [cut(), turn(MEET), turn(MEET, BUST, 'freed', 'slash', SIDE)],
  }),
  pass('move-both', 'the-other-parts', {
    edit: () => [cut(), turn(MEET, BUST, 'rest', 'slash', SIDE), turn(MEET, BUST, 'rest')],
  }),
  pass('move-both', 'typed-angles', {
    edit: () => [
      cut(),
      turn({ angle: -HALF }, BUST, 'freed', 'slash', SIDE),
      turn({ angle: -HALF }, BUST, 'freed', 'slash', DART),
    ],
  }),
  fail('move-both', ['dart-moved/residual', 'dart-moved/opening'], 'waist-dart-half-closed', {
    causes: ['not-closed'],
    edit: () => [cut(), turn(MEET, BUST, 'freed', 'slash', SIDE), turn({ share: 0.5 })],
  }),
  fail('move-both', ['dart-moved/hinge'], 'cut-through', {
    causes: ['cut-through'],
    edit: () => [cut(2), turn(MEET, BUST, 'freed', 'slash', SIDE), turn(MEET)],
  }),

  ...proving().filter((one) => !one.name.startsWith('fail-')),
];
