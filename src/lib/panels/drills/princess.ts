import { PRINCESS_HANDS } from '../../lessons/drills/hands/princess.ts';
import { princessOf } from '../../lessons/drills/kinds/princess.ts';
import { PRINCESS_OPENING } from '../../strings/drill-words/princess.ts';
import { makerOf } from './maker.ts';

export const make = makerOf(
  princessOf,
  PRINCESS_HANDS,
  PRINCESS_OPENING,
  () => import('./whole/princess.ts'),
);
