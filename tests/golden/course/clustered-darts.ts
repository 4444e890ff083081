import { fail, pass, start, undone, type CourseCase } from './case.ts';
import { extending, proving } from './support/moves.ts';
import { fan, off, sharing } from './support/several.ts';

const SHOULDER = 'right/shoulder';

export const CASES: readonly CourseCase[] = [
  ...extending(),

  start('lines', ['slash-drawn/drawn', 'slash-drawn/drawn', 'slash-drawn/drawn', 'slashes-laid/count']),
  undone('lines', 'two-only', {
    codes: ['slash-drawn/drawn', 'slashes-laid/count'],
    edit: () => fan(SHOULDER, [0.4, 0.55]),
  }),
  pass('lines', 'as-shown'),
  pass('lines', 'middle-first', { edit: () => fan(SHOULDER, [0.5, 0.36, 0.64]) }),
  fail('lines', ['slashes-laid/spacing'], 'uneven', { edit: () => fan(SHOULDER, [0.2, 0.5, 0.66]) }),
  fail('lines', ['slashes-laid/spacing', 'slashes-laid/spacing'], 'too-wide', {
    edit: () => fan(SHOULDER, [0.15, 0.5, 0.85]),
  }),

  ...sharing('spread', 3),

  start('finish', ['dart-finished/point', 'dart-finished/point', 'dart-finished/point']),
  pass('finish', 'rising-to-the-neck'),
  pass('finish', 'rising-to-the-armhole', { edit: () => [off(1, 60), off(2, 42), off(3, 24)] }),
  fail('finish', ['dart-finished/graduated', 'dart-finished/graduated'], 'all-alike', {
    edit: () => [off(1, 30), off(2, 30), off(3, 30)],
  }),
  fail('finish', ['dart-finished/point', 'dart-finished/graduated'], 'one-left-at-the-bust-point', {
    causes: ['left-at-bust-point'],
    edit: () => [off(1, 3), off(2, 40), off(3, 55)],
  }),

  ...proving().filter(({ name }) => !name.startsWith('fail-')),
];
