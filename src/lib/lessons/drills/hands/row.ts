import { DART, type Hands } from './hand.ts';
import { MOVING_HANDS } from './moving.ts';

export const ROW_HANDS: Hands = {
  'working-dart': DART,
  lines: { tools: ['draw-slash'] },
  move: MOVING_HANDS.move,
  'sewn-point': { tools: ['back-off'] },
  'true-legs': { tools: ['true-legs', 'back-off'] },
};
