import { fail, pass, start, undone, type CourseCase } from './case.ts';
import { extending, proving } from './support/moves.ts';
import { fan, off, sharing } from './support/several.ts';

const NECK = 'right/neckline';

export const CASES: readonly CourseCase[] = [
  ...extending(),

  start('lines', ['slash-drawn/drawn', 'slash-drawn/drawn', 'slash-drawn/drawn', 'slashes-laid/count']),
  undone('lines', 'two-only', {
    codes: ['slash-drawn/drawn', 'slashes-laid/count'],
    edit: () => fan(NECK, [0.3, 0.6]),
  }),
  pass('lines', 'as-shown'),
  pass('lines', 'wider-and-middle-first', { edit: () => fan(NECK, [0.5, 0.2, 0.8]) }),
  fail('lines', ['slashes-laid/spacing'], 'two-too-close', { edit: () => fan(NECK, [0.3, 0.55, 0.6]) }),

  ...sharing('spread', 3),

  start('finish', ['dart-finished/point', 'dart-finished/point', 'dart-finished/point']),
  pass('finish', 'all-alike'),
  pass('finish', 'middle-ray-longest', { edit: () => [off(1, 60), off(2, 38), off(3, 60)] }),
  fail('finish', ['dart-finished/point', 'dart-finished/point', 'dart-finished/point'], 'an-inch-only', {
    edit: () => [off(1, 25.4), off(2, 25.4), off(3, 25.4)],
  }),

  ...proving().filter(({ name }) => !name.startsWith('fail-')),
];
