import { fail, pass, start, undone, type CourseCase, type Loose } from '../case.ts';

/*
 * Attempts at moving the waist dart into one slash, right and wrong: the rows of the mistakes table of trade.md for the steps extend, slash
 * and pivot. The angle is that of figure F2.
 */

export const DART = 'right/waist-dart';
export const BUST = { landmark: 'right/bust-point' } as const;
export const MEET = { until: 'legs-meet' } as const;
/** F2's dart, 18.5° (bust 84: B/4 − 2.5, memory), in radians as a learner types it. */
export const TYPED = 0.32288591161895;

export const extend = (to: object, dart = DART): Loose => ({ do: 'extend-dart', dart, to }) as Loose;
export const draw = (on: string, at: number, to: object = BUST, slash = 'slash'): Loose =>
  ({ do: 'draw-slash', slash, from: { on, at }, to }) as Loose;
export const cut = (past = 0, slash = 'slash'): Loose => ({ do: 'cut-slash', slash, past });
export const turn = (by: object, about: object = BUST, part = 'freed', into = 'slash', dart = DART): Loose =>
  ({ do: 'turn', dart, into, part, about, by }) as Loose;
export const pivot = (
  on: string,
  at: number,
  by: object = MEET,
  about: object = BUST,
  part = 'freed',
): Loose => ({ do: 'pivot', dart: DART, slash: 'slash', from: { on, at }, about, by, part }) as Loose;

/** Where a lesson wants its dart: fractions along the edge in outline order. */
export interface Wanted {
  readonly edge: string;
  readonly right: number;
  readonly alsoRight: number;
  readonly wrong: number;
  readonly otherEdge: string;
  /** 1 where the freed part turns with the clock to close the dart, -1 against it. */
  readonly sense: 1 | -1;
}

export const extending = (): CourseCase[] => [
  start('working-dart', ['darts-extended/tip']),
  pass('working-dart', 'to-the-bust-point'),
  pass('working-dart', 'a-pencil-line-off', { edit: () => [extend({ ...BUST, dx: 0.9, dy: -0.8 })] }),
  fail('working-dart', ['darts-extended/tip'], 'to-the-sewn-point', {
    causes: ['drawn-to-sewn-point'],
    edit: () => [extend({ landmark: 'right/waist-sewn-point' })],
  }),
  fail('working-dart', ['darts-extended/tip'], 'beside', {
    edit: () => [extend({ ...BUST, dx: -5, dy: 4 })],
  }),
];

export const drawing = ({ edge, alsoRight, wrong, otherEdge, right }: Wanted): CourseCase[] => [
  start('slash-line', ['slash-drawn/drawn']),
  pass('slash-line', 'as-shown'),
  pass('slash-line', 'elsewhere-in-the-stretch', { edit: () => [draw(edge, alsoRight)] }),
  pass('slash-line', 'drawn-again', { edit: () => [draw(edge, wrong), draw(edge, right)] }),
  fail('slash-line', ['slash-drawn/edge'], 'from-another-edge', {
    causes: ['other-edge'],
    edit: () => [draw(otherEdge, 0.5)],
  }),
  fail('slash-line', ['slash-drawn/place'], 'outside-the-stretch', { edit: () => [draw(edge, wrong)] }),
  fail('slash-line', ['slash-drawn/tip'], 'beside-the-bust-point', {
    edit: () => [draw(edge, right, { ...BUST, dx: -6, dy: -7 })],
  }),
];

const LEFT_OPEN = ['dart-moved/residual', 'dart-moved/opening'];

export const moving = ({ sense }: Wanted): CourseCase[] => [
  start('move', ['dart-moved/cut']),
  undone('move', 'cut-only', { codes: ['dart-moved/turned'], edit: () => [cut()] }),
  pass('move', 'until-the-legs-meet'),
  pass('move', 'the-other-part', { edit: () => [cut(), turn(MEET, BUST, 'rest')] }),
  pass('move', 'typed-angle', { edit: () => [cut(), turn({ angle: sense * TYPED })] }),
  pass('move', 'in-two-goes', { edit: () => [cut(), turn({ share: 0.4 }), turn(MEET)] }),
  fail('move', ['dart-moved/hinge'], '', { causes: ['cut-through'], edit: () => [cut(3), turn(MEET)] }),
  fail('move', LEFT_OPEN, 'not-far-enough', {
    causes: ['not-closed'],
    edit: () => [cut(), turn({ angle: sense * (TYPED - 0.1) })],
  }),
  fail('move', LEFT_OPEN, 'too-far', {
    causes: ['closed-too-far'],
    edit: () => [cut(), turn({ angle: sense * (TYPED + 0.08) })],
  }),
  fail('move', LEFT_OPEN, 'wrong-way', {
    causes: ['wrong-way'],
    edit: () => [cut(), turn({ angle: -sense * TYPED })],
  }),
];

export const pivoting = ({ edge, right, alsoRight, wrong, otherEdge, sense }: Wanted): CourseCase[] => [
  start('pivot', ['slash-drawn/drawn', 'dart-moved/cut']),
  pass('pivot', 'until-the-legs-meet'),
  pass('pivot', 'elsewhere-in-the-stretch', { edit: () => [pivot(edge, alsoRight)] }),
  pass('pivot', 'the-other-way-round', { edit: () => [pivot(edge, right, MEET, BUST, 'rest')] }),
  pass('pivot', 'typed-angle', { edit: () => [pivot(edge, right, { angle: sense * TYPED })] }),
  pass('pivot', 'slashed-instead', { edit: () => [draw(edge, right), cut(), turn(MEET)] }),
  undone('pivot', 'mark-only', { codes: ['dart-moved/cut'], edit: () => [draw(edge, right)] }),
  fail('pivot', ['slash-drawn/place'], 'outside-the-stretch', { edit: () => [pivot(edge, wrong)] }),
  undone('pivot', 'on-another-edge', {
    codes: ['slash-drawn/edge', 'dart-moved/cut'],
    causes: ['other-edge'],
    edit: () => [pivot(otherEdge, 0.5)],
  }),
  fail('pivot', LEFT_OPEN, 'not-far-enough', {
    causes: ['not-closed'],
    edit: () => [pivot(edge, right, { angle: sense * (TYPED - 0.1) })],
  }),
  fail('pivot', LEFT_OPEN, 'wrong-way', {
    causes: ['wrong-way'],
    edit: () => [pivot(edge, right, { angle: -sense * TYPED })],
  }),
];

export const proving = (): CourseCase[] => [
  start('prove', ['overlaid/shown']),
  pass('prove', 'on-the-block'),
  pass('prove', 'the-other-part-turned', {
    earlier: (commands) =>
      commands.map((c) => (c.do === 'turn' || c.do === 'pivot' ? { ...c, part: 'rest' } : c)),
  }),
  fail('prove', ['angle-kept/sum'], 'worked-from-the-sewn-point', {
    earlier: (commands) =>
      commands.map((c) => {
        const sewn = { landmark: 'right/waist-sewn-point' };
        if (c.do === 'extend-dart' || c.do === 'draw-slash') return { ...c, to: sewn };
        return c.do === 'turn' || c.do === 'pivot' ? { ...c, about: sewn } : c;
      }),
  }),
];
