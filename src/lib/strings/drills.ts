import type { DrillWords } from '../lessons/drills/to-work.ts';
import type { ExerciseId, Variant } from '../lessons/drills/types.ts';
import { BLOCK_WORDS } from './drill-words/later/block.ts';
import { FINISH_WORDS } from './drill-words/later/finish.ts';
import { FULLNESS_WORDS } from './drill-words/later/fullness.ts';
import { LADDERS } from './drill-words/hints.ts';
import type { KindWords } from './drill-words/kind-words.ts';
import { LINE_WORDS } from './drill-words/later/line.ts';
import { MOVING_WORDS } from './drill-words/later/moving.ts';
import { PRINCESS_WORDS } from './drill-words/later/princess.ts';
import { READY_WORDS } from './drill-words/later/ready.ts';
import { ROW_WORDS } from './drill-words/later/row.ts';
import { wholeWords } from './drill-words/whole-words.ts';
import type { RulerUnits } from './units.ts';

const WORDS: Readonly<Record<ExerciseId, KindWords>> = {
  slash: MOVING_WORDS,
  pivot: MOVING_WORDS,
  angle: MOVING_WORDS,
  split: MOVING_WORDS,
  join: MOVING_WORDS,
  finish: FINISH_WORDS,
  fullness: FULLNESS_WORDS,
  parallel: ROW_WORDS,
  several: ROW_WORDS,
  princess: PRINCESS_WORDS,
  line: LINE_WORDS,
  block: BLOCK_WORDS,
  ready: READY_WORDS,
};

/** The words of drills of all kinds, with lengths in the learner's units. */
export function drillWords(units: RulerUnits): DrillWords {
  const of = (v: Variant): DrillWords => wholeWords(WORDS[v.drill.exercise], LADDERS, units);
  return {
    title: (v) => of(v).title(v),
    summary: (v) => of(v).summary(v),
    step: (v, id) => of(v).step(v, id),
  };
}
