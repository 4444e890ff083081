import { apply } from '../../../src/lib/recipe/apply.ts';
import type { Command } from '../../../src/lib/recipe/types.ts';
import { BUST, between, CLEAR, hasFrom, isMove, type Mistake, type Move } from './mistake.ts';

/** Mistakes in drawing, cutting and turning, made in a step of a drill. */

const lastMove = (right: readonly Command[], change: (c: Move) => Command): Command[] => {
  const last = right.findLastIndex(isMove);
  return right.map((c, i) => (i === last && isMove(c) ? change(c) : c));
};
/** What the last turn is by, radians, where it is by an angle. */
const lastAngle = (own: readonly Command[]): number => {
  const move = own.findLast(isMove);
  return move && 'angle' in move.by ? move.by.angle : NaN;
};
const turning = (step: string): boolean => step === 'move' || step === 'pivot';
const placing = (step: string): boolean => step === 'slash-line' || step === 'pivot';

/** Steps in which they can be made; the others need not be worked to find that out. */
export const DRAWING_STEPS = ['working-dart', 'slash-line', 'move', 'pivot'] as const;

export const DRAWING: Readonly<Record<string, Mistake>> = {
  'wrong-way': ({ step, right, angles }) =>
    turning(step) ? { own: lastMove(right, (c) => ({ ...c, by: { angle: -angles.at(-1)! } })) } : undefined,
  'wrong-part': ({ step, right, angles }) =>
    turning(step)
      ? { own: lastMove(right, (c) => ({ ...c, part: 'rest', by: { angle: angles.at(-1)! } })) }
      : undefined,
  'pivot-slipped': ({ chance, step, right, angles }) => {
    if (!turning(step)) return undefined;
    // A turn by a displaces what it should not by 2 v sin(a/2).
    const least = CLEAR / (2 * Math.sin(Math.abs(angles.at(-1)!) / 2));
    const v = between(chance, least, 1.6 * least);
    const way = between(chance, 0, 2 * Math.PI);
    const [dx, dy] = [v * Math.cos(way), v * Math.sin(way)];
    return { own: lastMove(right, (c) => ({ ...c, about: { ...BUST, dx, dy } })), amount: () => v };
  },
  'not-closed': ({ chance, step, right, angles }) => {
    if (!turning(step)) return undefined;
    const angle = angles.at(-1)!;
    const left = between(chance, 0.08, Math.min(0.2, 0.7 * Math.abs(angle)));
    const own = lastMove(right, (c) => ({ ...c, by: { angle: angle - Math.sign(angle) * left } }));
    return Math.abs(angle) > 0.12 ? { own, amount: (made) => Math.abs(angle - lastAngle(made)) } : undefined;
  },
  'closed-too-far': ({ chance, step, right, angles }) => {
    if (!turning(step)) return undefined;
    const over = between(chance, 0.08, 0.2);
    const angle = angles.at(-1)!;
    return {
      own: lastMove(right, (c) => ({ ...c, by: { angle: angle + Math.sign(angle) * over } })),
      amount: (made) => Math.abs(angle - lastAngle(made)),
    };
  },
  'drawn-to-sewn-point': ({ variant, step, right }) => {
    const sewn = { landmark: variant.darts[0] === 'right' ? 'right/sewn-point' : 'right/waist-sewn-point' };
    if (step === 'working-dart')
      return { own: right.map((c) => (c.do === 'extend-dart' ? { ...c, to: sewn } : c)) };
    if (step === 'slash-line')
      return { own: right.map((c) => (c.do === 'draw-slash' ? { ...c, to: sewn } : c)) };
    return undefined;
  },
  'scale-mixed': ({ chance, variant, step, right }) => {
    if (!placing(step) || variant.goals.length !== 1) return undefined;
    const goal = variant.goals[0]!;
    const factor = chance() < 0.5 ? 0.5 : 2;
    const fraction = goal.fraction * factor;
    const length = goal.mm / goal.fraction;
    const clear = Math.abs(fraction - goal.fraction) * length > CLEAR;
    // Where twice the length is the length from the other end, the two mistakes are one.
    const other = Math.abs(fraction - (1 - goal.fraction)) * length > 2 * CLEAR;
    if (!(fraction < 0.97) || !clear || !other) return undefined;
    const at = Math.abs(goal.at - goal.fraction) < 1e-9 ? fraction : 1 - fraction;
    return {
      own: right.map((c) => (hasFrom(c) ? { ...c, from: { on: goal.edge, at } } : c)),
      amount: () => factor,
    };
  },
  'from-other-end': ({ variant, step, right }) => {
    if (!placing(step) || variant.goals.length !== 1) return undefined;
    const goal = variant.goals[0]!;
    const length = goal.mm / goal.fraction;
    if (Math.abs(1 - 2 * goal.fraction) * length < 2 * CLEAR) return undefined;
    const halves = [0.5, 2].flatMap((f) => [goal.fraction * f, 1 - (1 - goal.fraction) * f]);
    if (halves.some((f) => Math.abs(f - (1 - goal.fraction)) * length < 2 * CLEAR)) return undefined;
    return { own: right.map((c) => (hasFrom(c) ? { ...c, from: { on: goal.edge, at: 1 - goal.at } } : c)) };
  },
  'other-edge': ({ chance, variant, step, right }) => {
    if (!placing(step) || variant.goals.length !== 1) return undefined;
    const edges = ['right/shoulder', 'right/neckline', 'centre-front'].filter(
      (e) => e !== variant.goals[0]!.edge,
    );
    const on = edges[Math.floor(chance() * edges.length)]!;
    const at = between(chance, 0.35, 0.65);
    return { own: right.map((c) => (hasFrom(c) ? { ...c, from: { on, at } } : c)) };
  },
  // In place of the dart that is meant, or beside it.
  'other-dart': ({ chance, variant, step, right, before }) => {
    if (!turning(step) || variant.form !== 'two-dart' || variant.darts.length !== 1) return undefined;
    const other = variant.darts[0] === 'right' ? 'right/waist-dart' : 'right';
    const extend: Command = { do: 'extend-dart', dart: other, to: BUST, step };
    const works = 'work' in apply(before, extend);
    if (!works) return undefined;
    const instead = right.map((c) => (isMove(c) ? { ...c, dart: other } : c));
    const last = right.findLast((c) => c.do === 'turn');
    if (last === undefined || chance() < 0.5) return { own: [extend, ...instead] };
    return { own: [extend, ...right, { ...last, dart: other, by: { until: 'legs-meet' } }] };
  },
  'shares-exchanged': ({ variant, step, right }) => {
    if (step !== 'move' || variant.drill.exercise !== 'split') return undefined;
    const share = variant.shares[0]!;
    if (Math.abs(share - 0.5) < 0.05) return undefined;
    const first = right.findIndex(isMove);
    return { own: right.map((c, i) => (i === first && isMove(c) ? { ...c, by: { share: 1 - share } } : c)) };
  },
  'cut-through': ({ step, right }) =>
    step === 'move' ? { own: right.map((c) => (c.do === 'cut-slash' ? { ...c, past: 4 } : c)) } : undefined,
};
