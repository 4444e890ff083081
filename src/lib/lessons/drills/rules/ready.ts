import type { Variant } from '../types.ts';
import { leftoverTreated } from './line.ts';
import { within, type Rules } from './rule.ts';

/** As in the main lesson: the two pieces of the front, and the seams that are walked. */
const PIECES = ['upper', 'lower'] as const;
const SEAMS = ['style-line', 'right/shoulder', 'left/shoulder', 'right/side', 'left/side'] as const;

/** Both cloths, each on pieces of its own. */
export const treat = (v: Variant): Rules => ({
  checks: leftoverTreated(v, ['knit', 'woven'], ['right/shoulder', 'left/side']),
  worked: { by: 'leftover' },
});

/** The least that a seam is sewn with, mm: 1/4 in (trade notes, read). */
const CENTRE = 6.35;

/** Each edge the one width that the exercise gives it. */
export function allowances(v: Variant): Rules {
  const { seam, curve, hem } = v.widths!;
  return {
    checks: [
      {
        check: 'allowances',
        names: { pieces: PIECES },
        numbers: {
          ...{ knit: seam, woven: seam, curve, curveMost: curve, hemLeast: hem, hemMost: hem },
          centreLeast: CENTRE,
        },
        tolerances: {
          width: within(v, 1.6, 'allowance-width'),
          partners: within(v, 0.8, 'same-width'),
        },
      },
    ],
    worked: { by: 'allowances' },
  };
}

const DEGREE = 0.0174533;

/** For the woven the halves of the back are trued each by itself: there is no half that serves for both. */
export const labelAndGrain = (v: Variant): Rules => ({
  checks: [
    {
      check: 'labels',
      names: { pieces: PIECES, fold: 'centre-back' },
      numbers: { backCut: 2, ...(v.drill.fabric === 'knit' && { backCutAtSeam: 2 }) },
    },
    {
      check: 'grain',
      names: { pieces: PIECES },
      tolerances: { angle: within(v, DEGREE, 'grain-degree') },
    },
  ],
  worked: { by: 'label-and-grain' },
});

export const walkTheSeams = (v: Variant): Rules => ({
  checks: [
    { check: 'walked', names: { seams: SEAMS }, tolerances: { walk: within(v, 3.2, 'passable-seam') } },
  ],
  worked: { by: 'walk-the-seams' },
});
