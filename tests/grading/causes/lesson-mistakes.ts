import { sewnPointOf } from '../../../src/lib/grading/checks/darts-extended.ts';
import type { Command } from '../../../src/lib/recipe/types.ts';
import { COURSE } from './course-mistakes.ts';
import { DRAWING } from './drawing-mistakes.ts';
import { FINISHING } from './finishing-mistakes.ts';
import { between, CLEAR, hasFrom, isMove, pick, type Mistake } from './mistake.ts';

/** Mistakes as they are made in any step of the course that has room for them. What drills make too is made as there. */
export interface LessonMistake {
  readonly truth: string;
  /** Only in these steps; anywhere, where it is left out. */
  readonly at?: readonly (readonly [lesson: string, step: string])[];
  readonly make: Mistake<undefined>;
}

/** As in a drill's step in which something is turned. */
const turned = (name: string): LessonMistake => ({
  truth: name,
  make: (at) =>
    at.right.some(isMove) ? DRAWING[name]!({ ...at, step: 'move', variant: undefined as never }) : undefined,
});
const finished = (name: string): LessonMistake => ({
  truth: name,
  make: (at) => FINISHING[name]!({ ...at, variant: undefined as never }),
});

/** One of the commands of a kind, drawn by chance, changed. */
function one(
  chance: () => number,
  right: readonly Command[],
  is: (c: Command) => boolean,
  change: (c: Command) => Command,
): { own: Command[] } | undefined {
  const places = right.flatMap((c, i) => (is(c) ? [i] : []));
  if (places.length === 0) return undefined;
  const at = pick(chance, places);
  return { own: right.map((c, i) => (i === at ? change(c) : c)) };
}

const isDrawn = (c: Command) => c.do === 'extend-dart' || c.do === 'draw-slash';
const EDGES = ['right/shoulder', 'right/neckline', 'right/armhole', 'centre-front', 'right/side'] as const;

export const IN_LESSONS: readonly LessonMistake[] = [
  ...['wrong-way', 'wrong-part', 'not-closed', 'closed-too-far', 'cut-through'].map(turned),
  ...['folded-other-way', 'left-at-bust-point'].map(finished),
  {
    truth: 'pivot-slipped',
    make: ({ chance, right, angles }) => {
      const last = right.findLastIndex(isMove);
      if (last < 0) return undefined;
      const least = CLEAR / (2 * Math.sin(Math.abs(angles.at(-1)!) / 2));
      const v = between(chance, least, 1.6 * least);
      const way = between(chance, 0, 2 * Math.PI);
      const own = right.map((c, i) =>
        i === last && isMove(c)
          ? { ...c, about: { ...c.about, dx: v * Math.cos(way), dy: v * Math.sin(way) } }
          : c,
      );
      return { own, amount: () => v };
    },
  },
  {
    truth: 'drawn-to-sewn-point',
    make: ({ chance, right }) =>
      one(chance, right, isDrawn, (c) =>
        c.do === 'extend-dart'
          ? { ...c, to: { landmark: sewnPointOf(c.dart) } }
          : c.do === 'draw-slash'
            ? { ...c, to: { landmark: 'right/waist-sewn-point' } }
            : c,
      ),
  },
  {
    truth: 'other-bust-point',
    at: [['asymmetric-darts', 'slash-lines']],
    make: ({ chance, right }) =>
      one(
        chance,
        right,
        (c) => c.do === 'draw-slash',
        (c) => {
          if (c.do !== 'draw-slash' || !('landmark' in c.to)) return c;
          const side = c.to.landmark.startsWith('right') ? 'left' : 'right';
          return { ...c, to: { landmark: `${side}/bust-point` } };
        },
      ),
  },
  {
    truth: 'other-edge',
    make: ({ chance, right }) => {
      const used = right.flatMap((c) => (hasFrom(c) && 'on' in c.from ? [c.from.on] : []));
      const on = pick(
        chance,
        EDGES.filter((edge) => !used.includes(edge)),
      );
      const from = { on, at: between(chance, 0.35, 0.65) };
      return one(chance, right, hasFrom, (c) => (hasFrom(c) ? { ...c, from } : c));
    },
  },
  {
    truth: 'shares-exchanged',
    make: ({ right, angles }) => {
      const moves = right.flatMap((c, i) => (isMove(c) ? [i] : []));
      if (moves.length < 2 || Math.abs(angles[0]! - angles[1]!) < 0.03) return undefined;
      const own = right.map((c, i): Command => {
        const n = moves.indexOf(i);
        if (!isMove(c) || 'until' in c.by || n > 1) return c;
        return { ...c, by: { angle: angles[1 - n]! } };
      });
      return { own };
    },
  },
  ...COURSE,
];

/** Faults that come of no procedure: drawn beside the point, begun anywhere, misread. Nothing may be named for them. */
export const OF_NO_KIND: readonly LessonMistake[] = [
  {
    truth: 'none',
    make: ({ chance, right }) => {
      const [away, way] = [between(chance, 8, 30), between(chance, 0, 2 * Math.PI)];
      const off = { dx: away * Math.cos(way), dy: away * Math.sin(way) };
      return one(chance, right, isDrawn, (c) =>
        c.do === 'extend-dart' || c.do === 'draw-slash' ? { ...c, to: { ...c.to, ...off } } : c,
      );
    },
  },
  {
    truth: 'none',
    make: ({ chance, right }) =>
      one(chance, right, hasFrom, (c) =>
        hasFrom(c) && 'on' in c.from ? { ...c, from: { ...c.from, at: between(chance, 0.03, 0.97) } } : c,
      ),
  },
  {
    truth: 'none',
    make: ({ chance, right }) =>
      one(
        chance,
        right,
        (c) => c.do === 'back-off' || c.do === 'allow' || c.do === 'fullness',
        (c) => {
          // Clear of half and of twice: those are a mix of scales.
          const factor = pick(chance, [
            between(chance, 0.15, 0.3),
            between(chance, 0.7, 0.8),
            between(chance, 1.3, 1.6),
          ]);
          // Farther from its tip than a hand trembles: nearer it would be left where it was.
          if (c.do === 'back-off') return { ...c, by: Math.max(7, c.by * factor) };
          if (c.do === 'fullness') return { ...c, before: c.before * factor };
          return c.do === 'allow' ? { ...c, width: c.width * factor } : c;
        },
      ),
  },
];
