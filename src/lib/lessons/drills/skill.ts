import type { DrillStepId } from './steps.ts';
import type { ExerciseId, Variant } from './types.ts';

const fromOf = (v: Variant): string => (v.form === 'side' || v.darts[0] === 'right' ? 'side' : 'waist');

/** Where the angle goes, as the skills of the course name it. */
function placeOf(v: Variant): string {
  const { exercise } = v.drill;
  const place = v.goals[0]?.place;
  if (exercise === 'join') return `both-to-${place}`;
  // The seam that the waist dart runs into; the side dart only goes along.
  if (exercise === 'princess') return `waist-to-${place}-line`;
  const from = fromOf(v);
  if (place === undefined) return from;
  if (exercise === 'line') return `${from}-to-style-line`;
  if (exercise === 'split') return `${from}-to-two`;
  if (exercise === 'fullness') return `${from}-to-edge`;
  if (exercise === 'parallel') return `${from}-to-parallel`;
  if (exercise === 'several') return `${from}-to-${place === 'neckline' ? 'neck-rays' : 'cluster'}`;
  return `${from}-to-${place}`;
}

const methodOf = (v: Variant): string => {
  const { exercise } = v.drill;
  if (exercise === 'pivot' || exercise === 'angle') return exercise;
  return v.goals.length > 0 ? 'slash' : 'drawn';
};

/** How a kind of drill ends. */
function finishingOf(v: Variant): string {
  if (v.filled) return v.filled.as;
  if (v.sewn) return 'cap';
  if (v.row) return 'backed-off';
  return v.smooth === undefined ? 'plain' : 'princess';
}

/** Kinds that are one skill of the hand as a whole. */
const WHOLE: Readonly<Partial<Record<ExerciseId, string>>> = { ready: 'make-ready', block: 'read-block' };

/** What a drill practises: where the dart goes, how, and what is made of it; or a skill of the hand. */
export const drillSkill = (v: Variant): string =>
  WHOLE[v.drill.exercise] ?? `${placeOf(v)}/${methodOf(v)}/${finishingOf(v)}`;

/** Steps that are a skill by themselves, wherever the dart goes. */
const OF_THE_HAND: readonly DrillStepId[] = [
  ...(['working-dart', 'style-line', 'notches', 'connector', 'separate', 'leftover', 'open-out'] as const),
];
/** Those of the main lesson, whose skills have other names than the steps. */
const NAMED: Readonly<Partial<Record<DrillStepId, string>>> = {
  'working-darts': 'working-dart',
  connectors: 'connector',
  'first-dart': 'side-to-style-line/slash/plain',
  'second-dart': 'side-to-style-line/slash/plain',
  treat: 'leftover',
  allowances: 'allowance',
  'label-and-grain': 'label-grain',
  'walk-the-seams': 'walk-seams',
};

/** What one step of a drill practises. */
export function stepSkill(v: Variant, id: DrillStepId): string {
  const named = NAMED[id];
  if (named !== undefined) return named;
  if (OF_THE_HAND.includes(id)) return id;
  if (id === 'sewn-point' && v.goals.length === 0) return 'dart/drawn/backed-off';
  if (id === 'sewn-point') return `${placeOf(v)}/${methodOf(v)}/backed-off`;
  const moves = id === 'slash-line' || id === 'lines' || id === 'move';
  // The seam is one skill from its first line on, as in the course.
  if (moves && v.smooth === undefined) return `${placeOf(v)}/${methodOf(v)}/plain`;
  return drillSkill(v);
}
