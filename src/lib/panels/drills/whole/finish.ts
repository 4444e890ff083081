import { FINISH } from '../../../lessons/drills/kits/finish.ts';
import { FINISH_WORDS } from '../../../strings/drill-words/later/finish.ts';
import { wholeOf } from './whole.ts';

export const whole = wholeOf(FINISH, FINISH_WORDS);
