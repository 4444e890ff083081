import { BLOCK_HANDS } from '../../lessons/drills/hands/block.ts';
import { findingOf } from '../../lessons/drills/kinds/block.ts';
import { BLOCK_OPENING } from '../../strings/drill-words/block.ts';
import { makerOf } from './maker.ts';

export const make = makerOf(findingOf, BLOCK_HANDS, BLOCK_OPENING, () => import('./whole/block.ts'));
