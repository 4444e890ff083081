import type { Variant } from '../types.ts';
import { within, type Rules } from './rule.ts';

export function fill(v: Variant): Rules {
  const { as, reach, tucks, limit } = v.filled!;
  const { edge } = v.goals[0]!;
  return {
    checks: [
      {
        check: 'fullness',
        names: { edge: [edge], as: [as] },
        numbers: {
          least: reach,
          most: reach,
          ...(as === 'tucks' && { 'least-tucks': tucks, 'most-tucks': tucks }),
          ...(limit !== undefined && { [`limit-${v.drill.fabric}`]: limit }),
        },
        tolerances: {
          reach: within(v, 1.6, 'pencil-line'),
          ...(limit !== undefined && { limit: within(v, 0.8, 'teacher-limit') }),
        },
      },
    ],
    worked: {
      by: 'fullness',
      edges: [edge],
      as,
      before: reach,
      after: reach,
      ...(as === 'tucks' && { tucks }),
    },
  };
}
