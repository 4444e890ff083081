import { PRINCESS_HANDS } from '../hands/princess.ts';
import { princessOf } from '../kinds/princess.ts';
import { notches, part, smooth } from '../rules/princess.ts';
import type { DrillKit } from './kit.ts';
import { MOVING } from './moving.ts';

export const PRINCESS = {
  of: princessOf,
  hands: PRINCESS_HANDS,
  rules: { ...MOVING.rules, 'cut-apart': part, smooth, 'seam-notches': notches },
} satisfies DrillKit;
