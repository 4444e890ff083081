import { FULLNESS_HANDS } from '../hands/fullness.ts';
import { fullnessOf } from '../kinds/fullness.ts';
import { fill } from '../rules/fullness.ts';
import type { DrillKit } from './kit.ts';
import { MOVING } from './moving.ts';

export const FULLNESS = {
  of: fullnessOf,
  hands: FULLNESS_HANDS,
  rules: { ...MOVING.rules, 'draw-over': fill },
} satisfies DrillKit;
