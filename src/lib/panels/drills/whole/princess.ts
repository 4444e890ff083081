import { PRINCESS } from '../../../lessons/drills/kits/princess.ts';
import { PRINCESS_WORDS } from '../../../strings/drill-words/later/princess.ts';
import { wholeOf } from './whole.ts';

export const whole = wholeOf(PRINCESS, PRINCESS_WORDS);
