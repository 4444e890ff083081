import { MOVING } from '../../../lessons/drills/kits/moving.ts';
import { MOVING_WORDS } from '../../../strings/drill-words/later/moving.ts';
import { wholeOf } from './whole.ts';

export const whole = wholeOf(MOVING, MOVING_WORDS);
