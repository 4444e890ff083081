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
  | 'leftover'
  | 'find'
  | 'read'
  | 'open-out'
  | 'working-darts'
  | 'connectors'
  | 'first-dart'
  | 'second-dart'
  | 'treat'
  | 'allowances'
  | 'label-and-grain'
  | 'walk-the-seams';

const MOVING: readonly DrillStepId[] = ['working-dart', 'slash-line', 'move'];

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
  block: ['find', 'read', 'open-out'],
  ready: ['treat', 'allowances', 'label-and-grain', 'walk-the-seams'],
};

/** How many steps the longest drill of a kind has. The numbers of steps hang on their order: it never changes. */
export const stepCount = (exercise: ExerciseId): number => STEPS[exercise].length;

/** The number of a step among those of its kind, from 1; 0 for one that the kind does not have. */
export const stepNumber = (exercise: ExerciseId, id: DrillStepId): number => STEPS[exercise].indexOf(id) + 1;

/** The steps of a drill in their order: those that are done when it begins, and those to be worked. */
export interface DrillSteps {
  readonly given: readonly DrillStepId[];
  readonly own: readonly DrillStepId[];
}

/** The steps of a drill. A dart that stays where it is needs no moving first; where the only step is one of moving it, the next one stands for it. */
export function stepsOf(v: Variant): DrillSteps {
  const { exercise, step } = v.drill;
  const { before = [] } = v;
  const all = STEPS[exercise];
  const there = all.filter((id) => v.goals.length > 0 || !MOVING.includes(id));
  if (step === undefined) return { given: before, own: there };
  const only = there.find((id) => all.indexOf(id) >= step - 1) ?? there.at(-1)!;
  return { given: [...before, ...there.slice(0, there.indexOf(only))], own: [only] };
}
