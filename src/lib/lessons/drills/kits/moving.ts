import { moveOf } from '../kinds/move.ts';
import { move, pivot, slashLine, workingDart } from '../rules/move.ts';
import type { DrillKit } from './kit.ts';

export const MOVING = {
  of: moveOf,
  rules: { 'working-dart': workingDart, 'slash-line': slashLine, move, pivot },
} satisfies DrillKit;
