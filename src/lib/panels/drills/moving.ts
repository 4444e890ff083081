import { MOVING_HANDS } from '../../lessons/drills/hands/moving.ts';
import { moveOf } from '../../lessons/drills/kinds/move.ts';
import { MOVING_OPENING } from '../../strings/drill-words/moving.ts';
import { makerOf } from './maker.ts';

export const make = makerOf(moveOf, MOVING_HANDS, MOVING_OPENING, () => import('./whole/moving.ts'));
