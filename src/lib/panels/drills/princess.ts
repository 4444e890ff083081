import { PRINCESS } from '../../lessons/drills/kits/princess.ts';
import { PRINCESS_WORDS } from '../../strings/drill-words/princess.ts';
import { makerOf } from './maker.ts';

export const make = makerOf(PRINCESS, PRINCESS_WORDS);
