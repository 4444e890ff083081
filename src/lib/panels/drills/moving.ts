import { MOVING } from '../../lessons/drills/kits/moving.ts';
import { MOVING_WORDS } from '../../strings/drill-words/moving.ts';
import { makerOf } from './maker.ts';

export const make = makerOf(MOVING, MOVING_WORDS);
