import { BLOCK } from '../../../lessons/drills/kits/block.ts';
import { BLOCK_WORDS } from '../../../strings/drill-words/later/block.ts';
import { wholeOf } from './whole.ts';

export const whole = wholeOf(BLOCK, BLOCK_WORDS);
