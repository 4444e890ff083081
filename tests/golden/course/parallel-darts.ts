import { fail, pass, start, undone, type CourseCase, type Loose } from './case.ts';
import type { Point } from '../../../src/lib/geometry/types.ts';
import { MEET, extending, proving } from './support/moves.ts';
import { cuts, fan, into, off, sharing } from './support/several.ts';

type Slash = Extract<Loose, { do: 'draw-slash' }>;
const slashes = (own: readonly unknown[]): Slash[] => own as Slash[];
/** The worked lines with their alternate pivots moved by so many mm towards centre front. */
const shifted = (own: readonly unknown[], by: readonly number[]): Loose[] =>
  slashes(own).map((one, i) => {
    const via = one.via as { landmark: string; dx: number; dy: number };
    return { ...one, via: { ...via, dx: via.dx + by[i]! } };
  });

export const CASES: readonly CourseCase[] = [
  ...extending(),

  start('lines', ['slash-drawn/drawn', 'slash-drawn/drawn', 'slashes-laid/count']),
  undone('lines', 'one-only', {
    codes: ['slash-drawn/drawn', 'slashes-laid/count'],
    edit: ({ own }) => slashes(own).slice(0, 1),
  }),
  undone('lines', 'straight-to-the-bust-point', {
    codes: ['slashes-laid/pivot', 'slashes-laid/pivot', 'slashes-laid/parallel'],
    edit: () => fan('right/shoulder', [0.4, 0.62]),
  }),
  pass('lines', 'as-shown'),
  pass('lines', 'in-the-other-order', { edit: ({ own }) => [...slashes(own)].reverse() }),
  pass('lines', 'drawn-again', { edit: ({ own }) => [...shifted(own, [9, 9]), ...slashes(own)] }),
  fail('lines', ['slashes-laid/pivot', 'slashes-laid/parallel'], 'too-far-from-the-bust-point', {
    edit: ({ own }) => shifted(own, [0, 22]),
  }),

  ...sharing('move', 2),

  fail('move', ['dart-moved/pivot', 'dart-moved/opening'], 'about-an-alternate-pivot', {
    causes: ['pivot-slipped'],
    edit: ({ work }) => {
      const [{ chain }] = work.lines as unknown as [{ chain: { a: Point; d: Point }[] }];
      const { d: via } = chain[0]!;
      const { d: bust } = chain[1]!;
      const about = { landmark: 'right/bust-point', dx: via.x - bust.x, dy: via.y - bust.y };
      return [...cuts(2), into(1, { share: 0.5 }), into(2, MEET, about)];
    },
  }),

  start('finish', ['dart-finished/point', 'dart-finished/point']),
  undone('finish', 'one-only', { codes: ['dart-finished/point'], edit: () => [off(1, 5)] }),
  pass('finish', 'just-before-the-pivots'),
  pass('finish', 'at-half-an-inch', { edit: () => [off(2, 12.7), off(1, 12.7)] }),
  fail('finish', ['dart-finished/point', 'dart-finished/point'], 'as-from-the-bust-point', {
    edit: () => [off(1, 25.4), off(2, 25.4)],
  }),

  ...proving().filter(({ name }) => !name.startsWith('fail-')),
];
