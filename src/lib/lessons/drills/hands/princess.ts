import { CUTTING, type Hands } from './hand.ts';
import { MOVING_HANDS } from './moving.ts';

export const PRINCESS_HANDS: Hands = {
  ...MOVING_HANDS,
  'cut-apart': { tools: ['part-at-darts'], cautions: CUTTING },
  smooth: { tools: ['smooth-seam'] },
  'seam-notches': { tools: ['notch-seam'] },
};
