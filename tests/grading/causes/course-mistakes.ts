import type { Command } from '../../../src/lib/recipe/types.ts';
import { CLEAR, pick, type Mistake } from './mistake.ts';

/** Mistakes that drills leave no room for, made in a step of a lesson of the course. */
export interface CourseMistake {
  readonly truth: string;
  /** Where: ids of lessons and steps. */
  readonly at: readonly (readonly [lesson: string, step: string])[];
  readonly make: Mistake<undefined>;
}

const widthOf = (c: Command): number => (c.do === 'allow' ? c.width : 0);

export const COURSE: readonly CourseMistake[] = [
  {
    truth: 'mirrored-about-other-edge',
    at: [
      ['slanted-seam', 'open-out'],
      ['asymmetric-darts', 'open-out'],
    ],
    make: ({ chance, right, before }) => {
      const edges = before.pieces
        .filter(({ id }) => id === 'front')
        .flatMap(({ parts }) => parts.flatMap((p) => p.edges))
        .filter(({ id, role }) => role !== 'dart-leg' && id !== 'centre-front')
        .map(({ id }) => id);
      const about = pick(chance, edges);
      return { own: right.map((c) => (c.do === 'open-out' ? { ...c, about } : c)) };
    },
  },
  {
    // All widths, or those of one piece.
    truth: 'scale-mixed',
    at: [['slanted-seam', 'allowances']],
    make: ({ chance, right }) => {
      const factor = chance() < 0.5 ? 0.5 : 2;
      const pieces = new Set(right.flatMap((c) => (c.do === 'allow' && widthOf(c) > 0 ? [c.piece] : [])));
      const only = pick(chance, [undefined, ...pieces]);
      const own = right.map((c): Command =>
        c.do === 'allow' && (only === undefined || c.piece === only) ? { ...c, width: c.width * factor } : c,
      );
      return { own, amount: () => factor };
    },
  },
  {
    // Both lengths, or one of them.
    truth: 'scale-mixed',
    at: [
      ['reading-the-block', 'read'],
      ['extend-a-dart', 'read'],
      ['slanted-seam', 'read-the-block'],
    ],
    make: ({ chance, right }) => {
      const factor = chance() < 0.5 ? 0.5 : 2;
      const lengths = right.flatMap((c) => (c.do === 'read' && c.what !== 'dart-angle' ? [c] : []));
      const only = pick(chance, [undefined, ...lengths.map((c) => c.what)]);
      const wrong = lengths.filter((c) => only === undefined || c.what === only);
      if (wrong.length === 0 || wrong.some((c) => c.value * Math.abs(factor - 1) < CLEAR)) return undefined;
      const own = right.map((c): Command =>
        c.do === 'read' && wrong.some((w) => w.what === c.what) ? { ...c, value: c.value * factor } : c,
      );
      return { own, amount: () => factor };
    },
  },
  {
    // One seam or more; whatever they conclude from it.
    truth: 'cut-line-walked',
    at: [['slanted-seam', 'walk-the-seams']],
    make: ({ chance, right }) => {
      const seams = right.flatMap((c) => (c.do === 'walk' ? [c.seam] : []));
      const sure = pick(chance, seams);
      const own = right.map((c): Command => {
        if (c.do !== 'walk' || (c.seam !== sure && chance() < 0.5)) return c;
        return { ...c, along: 'cut', says: chance() < 0.5 ? 'differs' : c.says };
      });
      return { own };
    },
  },
];
