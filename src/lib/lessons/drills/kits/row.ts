import { ROW_HANDS } from '../hands/row.ts';
import { rowOf } from '../kinds/row.ts';
import { sewnPoint, trueLegs } from '../rules/finish.ts';
import { move } from '../rules/move.ts';
import { lines } from '../rules/row.ts';
import { workingDart } from '../rules/working-dart.ts';
import type { DrillKit } from './kit.ts';

export const ROW = {
  of: rowOf,
  hands: ROW_HANDS,
  rules: { 'working-dart': workingDart, lines, move, 'sewn-point': sewnPoint, 'true-legs': trueLegs },
} satisfies DrillKit;
