import type { Hands } from './hand.ts';
import { MOVING_HANDS } from './moving.ts';

export const FINISH_HANDS: Hands = {
  ...MOVING_HANDS,
  'sewn-point': { tools: (v) => (v.goals.length > 0 ? ['back-off'] : ['back-off', 'extend-dart']) },
  cap: { tools: ['cap', 'true-legs', 'back-off'] },
};
