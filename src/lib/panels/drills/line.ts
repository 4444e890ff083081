import { LINE_HANDS } from '../../lessons/drills/hands/line.ts';
import { lineOf } from '../../lessons/drills/kinds/line.ts';
import { LINE_OPENING } from '../../strings/drill-words/line.ts';
import { makerOf } from './maker.ts';

export const make = makerOf(lineOf, LINE_HANDS, LINE_OPENING, () => import('./whole/line.ts'));
