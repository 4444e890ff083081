import { READY_HANDS } from '../../lessons/drills/hands/ready.ts';
import { readyOf } from '../../lessons/drills/kinds/ready.ts';
import { READY_OPENING } from '../../strings/drill-words/ready.ts';
import { makerOf } from './maker.ts';

export const make = makerOf(readyOf, READY_HANDS, READY_OPENING, () => import('./whole/ready.ts'));
