import { CUTTING, DART, type Hands } from './hand.ts';

/** A dart is moved by a slash, or by the pin. */
export const MOVING_HANDS = {
  'working-dart': DART,
  'slash-line': { tools: ['draw-slash'] },
  move: { tools: ['cut-slash', 'turn'], cautions: CUTTING },
  pivot: { tools: ['pivot'] },
} satisfies Hands;
