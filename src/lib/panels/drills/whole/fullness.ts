import { FULLNESS } from '../../../lessons/drills/kits/fullness.ts';
import { FULLNESS_WORDS } from '../../../strings/drill-words/later/fullness.ts';
import { wholeOf } from './whole.ts';

export const whole = wholeOf(FULLNESS, FULLNESS_WORDS);
