import { fullnessOf } from '../kinds/fullness.ts';
import { fill } from '../rules/fullness.ts';
import type { DrillKit } from './kit.ts';
import { MOVING } from './moving.ts';

export const FULLNESS = {
  of: fullnessOf,
  rules: { ...MOVING.rules, 'draw-over': fill },
} satisfies DrillKit;
