import { FULLNESS } from '../../lessons/drills/kits/fullness.ts';
import { FULLNESS_WORDS } from '../../strings/drill-words/fullness.ts';
import { makerOf } from './maker.ts';

export const make = makerOf(FULLNESS, FULLNESS_WORDS);
