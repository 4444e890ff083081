import { MOVING_HANDS } from '../hands/moving.ts';
import { moveOf } from '../kinds/move.ts';
import { move, pivot, slashLine } from '../rules/move.ts';
import { workingDart } from '../rules/working-dart.ts';
import type { DrillKit } from './kit.ts';

export const MOVING = {
  of: moveOf,
  hands: MOVING_HANDS,
  rules: { 'working-dart': workingDart, 'slash-line': slashLine, move, pivot },
} satisfies DrillKit;
