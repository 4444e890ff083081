import { FINISH_HANDS } from '../hands/finish.ts';
import { finishOf } from '../kinds/finish.ts';
import { cap, sewnPoint } from '../rules/finish.ts';
import type { DrillKit } from './kit.ts';
import { MOVING } from './moving.ts';

export const FINISH = {
  of: finishOf,
  hands: FINISH_HANDS,
  rules: { ...MOVING.rules, 'sewn-point': sewnPoint, cap },
} satisfies DrillKit;
