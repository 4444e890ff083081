import { ROW_HANDS } from '../../lessons/drills/hands/row.ts';
import { rowOf } from '../../lessons/drills/kinds/row.ts';
import { ROW_OPENING } from '../../strings/drill-words/row.ts';
import { makerOf } from './maker.ts';

export const make = makerOf(rowOf, ROW_HANDS, ROW_OPENING, () => import('./whole/row.ts'));
