import { lineOf } from '../kinds/line.ts';
import { connector, moveAlong, separate, styleLine } from '../rules/line.ts';
import { workingDart } from '../rules/move.ts';
import type { DrillKit } from './kit.ts';

export const LINE = {
  of: lineOf,
  rules: {
    'style-line': styleLine,
    'working-dart': workingDart,
    connector,
    'move-along': moveAlong,
    separate,
  },
} satisfies DrillKit;
