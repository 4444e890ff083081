import { ROW } from '../../lessons/drills/kits/row.ts';
import { ROW_WORDS } from '../../strings/drill-words/row.ts';
import { makerOf } from './maker.ts';

export const make = makerOf(ROW, ROW_WORDS);
