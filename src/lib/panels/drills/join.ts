import { JOIN } from '../../lessons/drills/kits/join.ts';
import { MOVING_WORDS } from '../../strings/drill-words/moving.ts';
import { makerOf } from './maker.ts';

export const make = makerOf(JOIN, MOVING_WORDS);
