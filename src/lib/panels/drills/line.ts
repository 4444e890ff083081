import { LINE } from '../../lessons/drills/kits/line.ts';
import { LINE_WORDS } from '../../strings/drill-words/line.ts';
import { makerOf } from './maker.ts';

export const make = makerOf(LINE, LINE_WORDS);
