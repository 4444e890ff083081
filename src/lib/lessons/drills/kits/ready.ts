import { READY_HANDS } from '../hands/ready.ts';
import { readyOf } from '../kinds/ready.ts';
import { separate } from '../rules/line.ts';
import { allowances, labelAndGrain, treat, walkTheSeams } from '../rules/ready.ts';
import {
  connectors,
  firstDart,
  notches,
  openOut,
  secondDart,
  styleLine,
  workingDarts,
} from '../rules/ready-given.ts';
import type { DrillKit } from './kit.ts';

export const READY = {
  of: readyOf,
  hands: READY_HANDS,
  rules: {
    'open-out': openOut,
    'style-line': styleLine,
    notches,
    'working-darts': workingDarts,
    connectors,
    'first-dart': firstDart,
    'second-dart': secondDart,
    separate,
    treat,
    allowances,
    'label-and-grain': labelAndGrain,
    'walk-the-seams': walkTheSeams,
  },
} satisfies DrillKit;
