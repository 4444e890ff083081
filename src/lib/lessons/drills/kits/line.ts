import { LINE_HANDS } from '../hands/line.ts';
import { lineOf } from '../kinds/line.ts';
import { connector, leftover, moveAlong, notches, separate, styleLine } from '../rules/line.ts';
import { workingDart } from '../rules/working-dart.ts';
import type { DrillKit } from './kit.ts';

export const LINE = {
  of: lineOf,
  hands: LINE_HANDS,
  rules: {
    'style-line': styleLine,
    notches,
    'working-dart': workingDart,
    connector,
    'move-along': moveAlong,
    separate,
    leftover,
  },
} satisfies DrillKit;
