import { MOVING_HANDS } from '../../lessons/drills/hands/moving.ts';
import { joinOf } from '../../lessons/drills/kinds/join.ts';
import { MOVING_OPENING } from '../../strings/drill-words/moving.ts';
import { makerOf } from './maker.ts';

export const make = makerOf(joinOf, MOVING_HANDS, MOVING_OPENING, () => import('./whole/moving.ts'));
