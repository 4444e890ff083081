import { CUTTING, DART, type Hands } from './hand.ts';

export const LINE_HANDS: Hands = {
  'style-line': { tools: ['draw-line'] },
  notches: { tools: ['notch', 'remove-notch'] },
  'working-dart': DART,
  connector: { tools: ['connect'] },
  'move-along': { tools: ['slash', 'turn'], cautions: CUTTING },
  separate: { tools: ['separate', 'overlay'], cautions: CUTTING },
  leftover: { tools: ['bridge', 'ease', 'take-out', 'true', 'renotch'], cautions: CUTTING },
};
