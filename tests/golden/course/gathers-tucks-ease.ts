import { fail, pass, start, undone, type CourseCase, type Loose } from './case.ts';
import { BUST, MEET, TYPED, draw, extending } from './support/moves.ts';
import { cuts, into } from './support/several.ts';

const EDGES = ['right/shoulder', 'right/neckline', 'right/armhole'];
const lines = (...ats: number[]): Loose[] => ats.map((at, i) => draw(EDGES[i]!, at, BUST, `slash-${i + 1}`));
const full = (n: number, as: string, before = 28, after = 28, tucks?: number): Loose =>
  ({ do: 'fullness', dart: `slash-${n}`, as, before, after, ...(tucks && { tucks }) }) as Loose;

export const CASES: readonly CourseCase[] = [
  ...extending(),

  start('slash-lines', ['slash-drawn/drawn', 'slash-drawn/drawn', 'slash-drawn/drawn']),
  undone('slash-lines', 'two-only', { codes: ['slash-drawn/drawn'], edit: () => lines(0.5, 0.5) }),
  pass('slash-lines', 'as-shown'),
  pass('slash-lines', 'elsewhere', { edit: () => lines(0.4, 0.6, 0.42).reverse() }),
  fail('slash-lines', ['slash-drawn/place'], 'too-near-the-armhole', { edit: () => lines(0.1, 0.5, 0.5) }),

  start('move', ['dart-moved/cut', 'dart-moved/cut', 'dart-moved/cut']),
  pass('move', 'by-shares'),
  pass('move', 'by-typed-angles', {
    edit: () => [
      ...cuts(3),
      into(3, { angle: -0.15 * TYPED }),
      into(1, { angle: -0.5 * TYPED }),
      into(2, MEET),
    ],
  }),
  fail('move', ['dart-moved/opening', 'dart-moved/opening'], 'shoulder-and-neckline-exchanged', {
    edit: () => [...cuts(3), into(1, { share: 0.35 }), into(3, { share: 3 / 13 }), into(2, MEET)],
  }),
  fail('move', ['dart-moved/residual', 'dart-moved/opening'], 'armhole-forgotten', {
    causes: ['not-closed'],
    edit: () => [...cuts(3), into(1, { share: 0.5 }), into(2, { share: 0.7 })],
  }),

  start('gathers', ['fullness/drawn']),
  pass('gathers', 'as-shown'),
  pass('gathers', 'wider-on-one-side', { edit: () => [full(1, 'gathers', 20, 40)] }),
  fail('gathers', ['fullness/kind'], 'tucked-instead', { edit: () => [full(1, 'tucks', 28, 28, 4)] }),
  fail('gathers', ['fullness/before', 'fullness/after'], 'bridged-at-the-cut', {
    edit: () => [full(1, 'gathers', 5, 5)],
  }),

  start('tucks', ['fullness/drawn']),
  pass('tucks', 'three'),
  pass('tucks', 'two', { edit: () => [full(2, 'tucks', 25, 25, 2)] }),
  fail('tucks', ['fullness/tucks'], 'too-many', { edit: () => [full(2, 'tucks', 25, 25, 9)] }),
  fail('tucks', ['fullness/kind'], 'gathered-instead', { edit: () => [full(2, 'gathers', 25, 25)] }),

  start('ease', ['fullness/drawn']),
  pass('ease', 'as-shown'),
  pass('ease', 'over-a-longer-stretch', { edit: () => [full(3, 'ease', 45, 45)] }),
  fail('ease', ['fullness/kind'], 'gathered-instead', { edit: () => [full(3, 'gathers')] }),
  fail('ease', ['fullness/limit'], 'past-the-limit-of-a-woven', { fabric: 'woven' }),
];
