import type { Command } from '../../../src/lib/recipe/types.ts';
import { CLEAR, type Mistake } from './mistake.ts';

/** Mistakes in finishing what was opened, made in a step of a drill. */

const OPPOSITE = { up: 'down', down: 'up', centre: 'side', side: 'centre' } as const;

/** Steps in which they can be made. */
export const FINISHING_STEPS = ['sewn-point', 'true-legs', 'cap', 'draw-over', 'smooth'] as const;

export const FINISHING: Readonly<Record<string, Mistake>> = {
  'folded-other-way': ({ right }) =>
    right.some((c) => c.do === 'cap')
      ? { own: right.map((c) => (c.do === 'cap' ? { ...c, fold: OPPOSITE[c.fold] } : c)) }
      : undefined,
  'left-at-bust-point': ({ right }) => {
    const offs = right.flatMap((c) => (c.do === 'back-off' ? [c.by] : []));
    if (offs.length === 0 || Math.min(...offs) < CLEAR) return undefined;
    return { own: right.map((c) => (c.do === 'back-off' ? { ...c, by: 0 } : c)) };
  },
  'scale-mixed': ({ chance, right }) => {
    const factor = chance() < 0.5 ? 0.5 : 2;
    const given = right.flatMap((c) =>
      c.do === 'back-off'
        ? [c.by]
        : c.do === 'fullness'
          ? [c.before]
          : c.do === 'smooth-seam'
            ? [c.reach]
            : [],
    );
    if (given.length === 0 || Math.min(...given) * Math.abs(factor - 1) < CLEAR) return undefined;
    const own = right.map((c): Command => {
      if (c.do === 'back-off') return { ...c, by: c.by * factor };
      if (c.do === 'smooth-seam') return { ...c, reach: c.reach * factor };
      return c.do === 'fullness' ? { ...c, before: c.before * factor, after: c.after * factor } : c;
    });
    return { own, amount: () => factor };
  },
};
