import { chainLength } from '../../../src/lib/geometry/chain.ts';
import { findEdge } from '../../../src/lib/pattern/outline.ts';
import { blockOf } from '../../../src/lib/lessons/block.ts';
import { drillLesson, type DrillWords } from '../../../src/lib/lessons/drills/lesson.ts';
import { EXERCISES, type Drill, type Variant } from '../../../src/lib/lessons/drills/types.ts';
import { variantOf } from '../../../src/lib/lessons/drills/variant.ts';
import { workedStep } from '../../../src/lib/lessons/worked/index.ts';
import { apply } from '../../../src/lib/recipe/apply.ts';
import '../../../src/lib/recipe/commands/index.ts';
import { startWork } from '../../../src/lib/recipe/start.ts';
import type { Command, Work } from '../../../src/lib/recipe/types.ts';

/*
 * Wrong attempts with a known cause, made apart from the grading code: a drill is worked rightly up to a step, and in that step one
 * mistake is made, with the trembling of a hand on all that is placed freely. Invented data, for the test only.
 */

/** Standard deviation of a pointer, mm at full size: 0.8 mm at half scale. */
export const TREMBLE = 1.6;
const BUST = { landmark: 'right/bust-point' } as const;

export interface Simulated {
  readonly drill: Drill;
  /** What was done wrong; `none` for a right attempt. */
  readonly truth: string;
  readonly amount: number | undefined;
  readonly before: Work;
  readonly after: Work;
  readonly own: readonly Command[];
  readonly right: readonly Command[];
}

/** mulberry32 (public domain, T. Ettinger): chance for the test, unlike the generator under test. */
export function dice(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), a | 1);
    t = (t + Math.imul(t ^ (t >>> 7), t | 61)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
/** Box and Muller's normal deviate. */
const normal = (chance: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - chance())) * Math.cos(2 * Math.PI * chance());
const between = (chance: () => number, a: number, b: number): number => a + (b - a) * chance();

const WORDS: DrillWords = {
  title: () => 'A drill',
  summary: () => '',
  step: (_, id) => ({ title: id, text: [], hints: [] }),
};

type Mistake = (at: {
  readonly chance: () => number;
  readonly variant: Variant;
  readonly step: string;
  readonly before: Work;
  readonly right: readonly Command[];
  readonly angles: readonly number[];
}) => Made | undefined;

interface Made {
  readonly own: readonly Command[];
  /** By how much, mm, radians or a factor, as the commands say in the end, with the hand's trembling in them. */
  readonly amount?: (own: readonly Command[]) => number;
}

type Move = Extract<Command, { do: 'turn' | 'pivot' }>;
const isMove = (c: Command): c is Move => c.do === 'turn' || c.do === 'pivot';
const hasFrom = (c: Command): c is Extract<Command, { do: 'draw-slash' | 'pivot' }> =>
  c.do === 'draw-slash' || c.do === 'pivot';
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

/** What a mistake moves, at the least, mm: clearly more than the trembling. */
const CLEAR = 10;

const MISTAKES: Readonly<Record<string, Mistake>> = {
  'wrong-way': ({ step, right, angles }) =>
    turning(step) ? { own: lastMove(right, (c) => ({ ...c, by: { angle: -angles.at(-1)! } })) } : undefined,
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
  'other-dart': ({ variant, step, right, before }) => {
    if (!turning(step) || variant.form !== 'two-dart' || variant.darts.length !== 1) return undefined;
    const other = variant.darts[0] === 'right' ? 'right/waist-dart' : 'right';
    const extend: Command = { do: 'extend-dart', dart: other, to: BUST, step };
    const works = 'work' in apply(before, extend);
    return works
      ? { own: [extend, ...right.map((c) => (isMove(c) ? { ...c, dart: other } : c))] }
      : undefined;
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

export const TRUTHS = Object.keys(MISTAKES);

/** The hand's trembling on what is placed freely: where lines begin, and how far a part is turned by hand. */
function trembling(
  own: readonly Command[],
  before: Work,
  chance: () => number,
  sd: number,
): readonly Command[] {
  return own.map((c): Command => {
    if (hasFrom(c) && 'on' in c.from) {
      const edge = findEdge(before.opened!, c.from.on);
      const length = edge ? chainLength(edge.chain) : 200;
      const at = Math.min(0.98, Math.max(0.02, c.from.at + (normal(chance) * sd) / length));
      return { ...c, from: { on: c.from.on, at } };
    }
    // A part that is let go of without asking for the legs lies off by the trembling at some 180 mm from the pin.
    if (isMove(c) && 'angle' in c.by)
      return { ...c, by: { angle: c.by.angle + (normal(chance) * sd) / 180 } };
    return c;
  });
}

const carriedOut = (before: Work, commands: readonly Command[]): Work => {
  let work = before;
  for (const command of commands) {
    const next = apply(work, command);
    if ('work' in next) work = next.work;
  }
  return work;
};

/** One attempt at one step of a random drill; `wanted` says the mistake, `none` for a right attempt. Undefined where it does not apply to the drill drawn. */
export function simulate(seed: number, wanted: string, sd = TREMBLE): Simulated | undefined {
  const chance = dice(seed);
  const exercise = EXERCISES[Math.floor(chance() * EXERCISES.length)]!;
  const drill: Drill = {
    exercise,
    seed: Math.floor(chance() * 1e6),
    fabric: 'woven',
    band: 'usual',
    hints: 0,
  };
  const variant = variantOf(drill);
  const lesson = drillLesson(variant, WORDS);
  const target = Math.floor(chance() * lesson.steps.length);
  let before = startWork(blockOf(lesson));
  for (const step of lesson.steps.slice(0, target))
    before = carriedOut(before, trembling(workedStep(step, before, 'woven'), before, chance, sd / 4));
  const step = lesson.steps[target]!;
  const right = workedStep(step, before, 'woven');
  const rightly = carriedOut(before, right);
  const angles = rightly.turns.slice(before.turns.length).map((t) => t.angle);
  const made: Made | undefined =
    wanted === 'none'
      ? { own: right }
      : MISTAKES[wanted]!({ chance, variant, step: step.id, before, right, angles });
  if (!made) return undefined;
  const own = trembling(made.own, before, chance, sd);
  const after = carriedOut(before, own);
  return {
    drill,
    truth: wanted,
    amount: made.amount?.(own),
    before,
    after,
    own,
    right,
  };
}

/** So many attempts with mistakes, of all kinds in turn, as far as they apply. */
export function* wrongAttempts(count: number, seed = 1): Generator<Simulated> {
  let made = 0;
  for (let i = 0; made < count; i++) {
    const one = simulate(seed + i, TRUTHS[i % TRUTHS.length]!);
    if (!one) continue;
    made++;
    yield one;
  }
}
