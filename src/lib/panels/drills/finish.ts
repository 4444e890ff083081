import { FINISH } from '../../lessons/drills/kits/finish.ts';
import { FINISH_WORDS } from '../../strings/drill-words/finish.ts';
import { makerOf } from './maker.ts';

export const make = makerOf(FINISH, FINISH_WORDS);
