import type { ExerciseId, Variant } from './types.ts';

/** The steps that drills are made of. */
export type DrillStepId =
  | 'working-dart'
  | 'slash-line'
  | 'lines'
  | 'move'
  | 'pivot'
  | 'sewn-point'
  | 'true-legs'
  | 'cap'
  | 'draw-over'
  | 'cut-apart'
  | 'smooth'
  | 'seam-notches'
  | 'style-line'
  | 'notches'
  | 'connector'
  | 'move-along'
  | 'separate'
  | 'leftover';

const MOVING = ['working-dart', 'slash-line', 'move'] as const;

const STEPS: Readonly<Record<ExerciseId, readonly DrillStepId[]>> = {
  slash: MOVING,
  pivot: ['working-dart', 'pivot'],
  angle: MOVING,
  split: MOVING,
  join: MOVING,
  finish: [...MOVING, 'sewn-point', 'cap'],
  fullness: [...MOVING, 'draw-over'],
  parallel: ['working-dart', 'lines', 'move', 'sewn-point', 'true-legs'],
  several: ['working-dart', 'lines', 'move', 'sewn-point'],
  line: ['style-line', 'notches', 'working-dart', 'connector', 'move-along', 'separate', 'leftover'],
  princess: [...MOVING, 'cut-apart', 'smooth', 'seam-notches'],
};

/** The steps of a drill in their order. A dart that stays where it is needs no moving first. */
export const stepsOf = (v: Variant): readonly DrillStepId[] =>
  STEPS[v.drill.exercise].filter((id) => v.goals.length > 0 || id === 'sewn-point' || id === 'cap');
