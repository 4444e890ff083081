import type { ExerciseId } from '../types.ts';
import { BLOCK } from './block.ts';
import { FINISH } from './finish.ts';
import { FULLNESS } from './fullness.ts';
import { JOIN } from './join.ts';
import type { DrillKit } from './kit.ts';
import { LINE } from './line.ts';
import { MOVING } from './moving.ts';
import { PRINCESS } from './princess.ts';
import { READY } from './ready.ts';
import { ROW } from './row.ts';

/** The kits of all kinds at once, for whoever has no budget. */
export const KITS: Readonly<Record<ExerciseId, DrillKit>> = {
  slash: MOVING,
  pivot: MOVING,
  angle: MOVING,
  split: MOVING,
  join: JOIN,
  finish: FINISH,
  fullness: FULLNESS,
  parallel: ROW,
  several: ROW,
  princess: PRINCESS,
  line: LINE,
  block: BLOCK,
  ready: READY,
};
