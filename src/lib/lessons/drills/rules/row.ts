import type { CheckSpec } from '../../../grading/types.ts';
import { PIVOTS } from '../kinds/row.ts';
import type { Variant } from '../types.ts';
import { BUST, edgesOf, within, type Rules } from './rule.ts';

/** The lines of a row: all of them within the stretch that it takes up, evenly apart, parallel where that is asked for. */
export function lines(v: Variant): Rules {
  const { count, spacing, radius } = v.row!;
  const goal = v.goals[0]!;
  const half = (((count - 1) / 2) * spacing * goal.fraction) / goal.mm;
  const laid: CheckSpec = {
    check: 'slashes-laid',
    names: { edge: [goal.edge] },
    numbers: { count, least: spacing, most: spacing, ...(radius !== undefined && PIVOTS) },
    tolerances: {
      spacing: within(v, 3.2, 'passable-seam'),
      ...(radius !== undefined && {
        parallel: within(v, 0.035, 'protractor'),
        pivot: within(v, 1.6, 'pencil-line'),
      }),
    },
  };
  return {
    checks: [
      {
        check: 'slash-drawn',
        names: { edges: edgesOf(v), from: [goal.from], bust: BUST },
        numbers: { least: goal.fraction - half, most: goal.fraction + half },
        tolerances: { place: within(v, 3.2, 'passable-seam'), tip: within(v, 1.6, 'pencil-line') },
      },
      laid,
    ],
    worked: {
      by: radius === undefined ? 'spaced-slashes' : 'parallel-slashes',
      edge: goal.edge,
      at: goal.at,
      spacing,
      count,
      ...(radius !== undefined && { radius }),
    },
  };
}
