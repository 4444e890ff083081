import { fail, pass, start, undone, type CourseCase, type Loose } from './case.ts';
import { BUST, DART, extend } from './support/moves.ts';

const SIDE = 'right';
const off = (dart: string, by: number): Loose => ({ do: 'back-off', dart, by });
const cap = (dart: string, fold: 'centre' | 'side' | 'up' | 'down'): Loose => ({ do: 'cap', dart, fold });

export const CASES: readonly CourseCase[] = [
  start('back-off', ['dart-finished/point', 'dart-finished/point']),
  undone('back-off', 'one-only', { codes: ['dart-finished/point'], edit: () => [off(SIDE, 25)] }),
  pass('back-off', 'as-shown'),
  pass('back-off', 'half-an-inch-and-an-inch', { edit: () => [off(DART, 12.7), off(SIDE, 25.4)] }),
  pass('back-off', 'from-working-darts', {
    edit: () => [extend(BUST, SIDE), extend(BUST), off(SIDE, 22), off(DART, 18)],
  }),
  fail('back-off', ['dart-finished/point'], 'left-at-the-bust-point', {
    causes: ['left-at-bust-point'],
    edit: () => [off(SIDE, 25.4), off(DART, 2)],
  }),
  fail('back-off', ['dart-finished/point'], 'at-half-scale', {
    edit: () => [off(SIDE, 12.7), off(DART, 16)],
  }),

  start('cap-side-dart', ['dart-finished/cap']),
  pass('cap-side-dart', 'folded-down'),
  pass('cap-side-dart', 'folded-down-at-last', { edit: () => [cap(SIDE, 'up'), cap(SIDE, 'down')] }),
  fail('cap-side-dart', ['dart-finished/cap'], 'folded-up', {
    causes: ['folded-other-way'],
    edit: () => [cap(SIDE, 'up')],
  }),

  start('cap-waist-dart', ['dart-finished/cap']),
  pass('cap-waist-dart', 'folded-to-the-centre'),
  pass('cap-waist-dart', 'backed-off-again', { edit: () => [off(DART, 14), cap(DART, 'centre')] }),
  fail('cap-waist-dart', ['dart-finished/cap'], 'folded-to-the-side', {
    causes: ['folded-other-way'],
    edit: () => [cap(DART, 'side')],
  }),
];
