import { READY } from '../../../lessons/drills/kits/ready.ts';
import { READY_WORDS } from '../../../strings/drill-words/later/ready.ts';
import { wholeOf } from './whole.ts';

export const whole = wholeOf(READY, READY_WORDS);
