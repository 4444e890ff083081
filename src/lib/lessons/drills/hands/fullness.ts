import type { Hands } from './hand.ts';
import { MOVING_HANDS } from './moving.ts';

export const FULLNESS_HANDS: Hands = { ...MOVING_HANDS, 'draw-over': { tools: ['fullness'] } };
