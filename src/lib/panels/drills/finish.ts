import { FINISH_HANDS } from '../../lessons/drills/hands/finish.ts';
import { finishOf } from '../../lessons/drills/kinds/finish.ts';
import { FINISH_OPENING } from '../../strings/drill-words/finish.ts';
import { makerOf } from './maker.ts';

export const make = makerOf(finishOf, FINISH_HANDS, FINISH_OPENING, () => import('./whole/finish.ts'));
