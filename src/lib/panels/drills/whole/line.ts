import { LINE } from '../../../lessons/drills/kits/line.ts';
import { LINE_WORDS } from '../../../strings/drill-words/later/line.ts';
import { wholeOf } from './whole.ts';

export const whole = wholeOf(LINE, LINE_WORDS);
