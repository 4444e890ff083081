import type { CheckSpec } from '../../../grading/types.ts';
import type { Variant } from '../types.ts';
import { BUST, edgesOf, within, type Rules } from './rule.ts';

const drawn = (v: Variant): CheckSpec => ({
  check: 'slash-drawn',
  names: {
    edges: v.goals.map((g) => g.edge),
    from: v.goals.map((g) => g.from),
    bust: BUST,
  },
  numbers: Object.fromEntries(
    v.goals.flatMap((g, i) => [
      [`least-${i + 1}`, g.fraction],
      [`most-${i + 1}`, g.fraction],
    ]),
  ),
  tolerances: { place: within(v, 3.2, 'passable-seam'), tip: within(v, 1.6, 'pencil-line') },
});

const slashOf = (v: Variant, i: number): string => (v.goals.length === 1 ? 'slash' : `slash-${i + 1}`);

export function slashLine(v: Variant): Rules {
  return {
    checks: [drawn(v)],
    worked: {
      by: 'commands',
      commands: v.goals.map((g, i) => ({
        do: 'draw-slash',
        slash: slashOf(v, i),
        from: { on: g.edge, at: g.at },
        to: { landmark: BUST },
      })),
    },
  };
}

const moved = (v: Variant): CheckSpec => ({
  check: 'dart-moved',
  names: { darts: v.darts, edges: edgesOf(v) },
  numbers: Object.fromEntries(v.shares.map((share, i) => [`share-${i + 1}`, share])),
  tolerances: {
    pivot: within(v, 0.5, 'pin-hole'),
    gap: within(v, 3.2, 'passable-seam'),
    opening: within(v, 3.2, 'passable-seam'),
  },
});

export function move(v: Variant): Rules {
  return {
    checks: [moved(v)],
    worked: { by: 'move-darts', darts: v.darts, edges: edgesOf(v), shares: v.shares },
  };
}

export function pivot(v: Variant): Rules {
  const [goal] = v.goals;
  return {
    checks: [drawn(v), moved(v)],
    worked: {
      by: 'commands',
      commands: v.darts.map((dart) => ({
        do: 'pivot',
        dart,
        slash: 'slash',
        from: { on: goal!.edge, at: goal!.at },
        about: { landmark: BUST },
        by: { until: 'legs-meet' },
        part: 'freed',
      })),
    },
  };
}
