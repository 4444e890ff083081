import { ROW } from '../../../lessons/drills/kits/row.ts';
import { ROW_WORDS } from '../../../strings/drill-words/later/row.ts';
import { wholeOf } from './whole.ts';

export const whole = wholeOf(ROW, ROW_WORDS);
