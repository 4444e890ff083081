import { gable, inOneStroke } from '../support/one-stroke.ts';
import { fail, pass, start, undone, type CourseCase, type Loose } from './case.ts';
import { BUST, MEET, extend } from './support/moves.ts';

const SIDE = 'right';
const line = (middle: object, from = 0.52, to = 0.5): Loose =>
  ({
    do: 'draw-line',
    line: 'line',
    points: [
      { on: 'right/shoulder', at: from },
      { ...BUST, ...middle },
      { on: 'right/waist', at: to },
    ],
  }) as Loose;
type Notch = Extract<Loose, { do: 'notch' }>;
type Connect = Extract<Loose, { do: 'connect' }>;
const slash = (past = 0, from: 'start' | 'end' = 'start'): Loose => ({
  do: 'slash',
  dart: SIDE,
  line: 'line',
  from,
  past,
});
const turn = (by: object, about: object = BUST, part = 'freed'): Loose =>
  ({ do: 'turn', dart: SIDE, part, about, by }) as Loose;

export const CASES: readonly CourseCase[] = [
  start('style-line', ['line-ends/drawn']),
  pass('style-line', 'as-shown'),
  pass('style-line', 'drawn-from-the-waist-up', {
    edit: ({ own }) =>
      own.map((c) => (c.do === 'draw-line' ? { ...c, points: [...c.points].reverse() } : (c as Loose))),
  }),
  pass('style-line', 'in-one-stroke', { edit: inOneStroke() }),
  fail('style-line', ['line-shape/kinks', 'line-shape/kink', 'line-shape/radius'], 'in-one-stroke', {
    edit: inOneStroke(gable(0.7, 0.9, 40)),
  }),
  fail('style-line', ['line-passes/distance'], 'too-far-off', { edit: () => [line({ dx: 40, dy: 0 })] }),
  fail('style-line', ['line-passes/side'], 'on-the-side-of-the-armhole', {
    codes: ['line-passes/side'],
    edit: () => [line({ dx: -18, dy: 0 }, 0.3, 0.8)],
  }),

  start('notches', ['notches-placed/before-foot', 'notches-placed/after-foot']),
  pass('notches', 'as-shown'),
  pass('notches', 'a-third-one', {
    edit: ({ own }) => [...(own as Loose[]), { do: 'notch', id: 'more', line: 'line', at: 0.1 }],
  }),
  fail('notches', ['notches-placed/after-foot'], 'one-side-only', {
    causes: ['one-side-only'],
    edit: ({ own }) => own.slice(0, 1) as Loose[],
  }),
  fail('notches', ['notches-placed/before-foot'], 'too-near', {
    edit: ({ own }) =>
      (own as Notch[]).map((c, i) => (i === 0 ? { ...c, at: c.at + 25 / 450 } : c)) as Loose[],
  }),

  start('working-dart', ['darts-extended/tip']),
  pass('working-dart', 'to-the-bust-point'),
  pass('working-dart', 'a-pencil-line-off', { edit: () => [extend({ ...BUST, dx: -1 }, SIDE)] }),
  fail('working-dart', ['darts-extended/tip'], 'to-the-sewn-point', {
    causes: ['drawn-to-sewn-point'],
    edit: () => [extend({ landmark: 'right/sewn-point' }, SIDE)],
  }),

  start('connector', ['connectors/foot']),
  pass('connector', 'shortest'),
  pass('connector', 'drawn-again', {
    edit: ({ own }) =>
      (own as Connect[]).flatMap((c): Loose[] => [{ ...c, at: c.at + 0.08, square: false }, c]),
  }),
  fail('connector', ['connectors/foot'], 'foot-too-low', {
    causes: ['opening-wider'],
    edit: ({ own }) => (own as Connect[]).map((c): Loose => ({ ...c, at: c.at + 0.06, square: false })),
  }),

  start('move', ['dart-closed/slashed']),
  undone('move', 'slashed-only', { codes: ['dart-closed/turned'], edit: () => [slash()] }),
  pass('move', 'until-the-legs-meet'),
  pass('move', 'the-other-part', { edit: () => [slash(), turn(MEET, BUST, 'rest')] }),
  fail('move', ['dart-closed/hinge'], '', { causes: ['cut-through'], edit: () => [slash(2), turn(MEET)] }),
  fail('move', ['dart-closed/pivot'], 'about-a-point-beside', {
    causes: ['pivot-slipped'],
    edit: () => [slash(), turn(MEET, { ...BUST, dx: 9, dy: 5 })],
  }),

  start('separate', ['separated/pieces', 'overlaid/shown', 'overlaid/shown']),
  pass('separate', 'and-laid-on-the-block'),
  pass('separate', 'side-piece-laid-first', {
    edit: ({ own }) => [own[0]!, ...own.slice(1).reverse()] as Loose[],
  }),
  undone('separate', 'not-laid-on-the-block', {
    codes: ['overlaid/shown', 'overlaid/shown'],
    edit: ({ own }) => own.slice(0, 1) as Loose[],
  }),

  start('leftover', ['leftover/bridged', 'leftover/copy']),
  pass('leftover', 'eased-and-taken-out'),
  pass('leftover', 'a-longer-bridge', {
    edit: ({ own }) => own.map((c) => (c.do === 'bridge' ? { ...c, before: 28, after: 22 } : c)) as Loose[],
  }),
  fail('leftover', ['leftover/amount'], 'half-of-it-taken-out', {
    causes: ['too-little-taken'],
    edit: ({ own }) => own.map((c) => (c.do === 'take-out' ? { ...c, amount: 2.5 } : c)) as Loose[],
  }),
];
