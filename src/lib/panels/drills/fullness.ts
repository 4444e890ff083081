import { FULLNESS_HANDS } from '../../lessons/drills/hands/fullness.ts';
import { fullnessOf } from '../../lessons/drills/kinds/fullness.ts';
import { FULLNESS_OPENING } from '../../strings/drill-words/fullness.ts';
import { makerOf } from './maker.ts';

export const make = makerOf(
  fullnessOf,
  FULLNESS_HANDS,
  FULLNESS_OPENING,
  () => import('./whole/fullness.ts'),
);
