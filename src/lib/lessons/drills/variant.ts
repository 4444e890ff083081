import { FIGURES } from '../../pattern/figures.ts';
import type { BlockForm, Piece } from '../../pattern/types.ts';
import { startWork } from '../../recipe/start.ts';
import { chanceFrom, pick, type Chance } from './chance.ts';
import { goalsOn } from './places.ts';
import { EXERCISES, type Drill, type ExerciseId, type Variant } from './types.ts';

const FORMS: Readonly<Record<ExerciseId, readonly BlockForm[]>> = {
  slash: ['waist', 'side', 'two-dart'],
  pivot: ['waist', 'side', 'two-dart'],
  angle: ['waist', 'side', 'two-dart'],
  split: ['waist', 'side'],
  join: ['two-dart'],
};

/** Shares of the angle for a split, in tenths, so that the angles can be worked out by hand. */
const SPLITS = [0.3, 0.4, 0.5, 0.6, 0.7] as const;

const DARTS: Readonly<Record<BlockForm, readonly string[]>> = {
  side: ['right'],
  waist: ['right/waist-dart'],
  'two-dart': ['right', 'right/waist-dart'],
};

/** The front of a demo figure in a form, as it lies on the table. */
export const paperOf = (figure: string, form: BlockForm): Piece => startWork({ figure, form }).opened!;

/** What a drill asks for, worked out from its seed alone: the same drill is the same exercise on every machine. */
export function variantOf(drill: Drill): Variant {
  // Neighbouring seeds of one exercise, and one seed of different exercises, have nothing to do with each other.
  const chance = chanceFrom(drill.seed * EXERCISES.length + EXERCISES.indexOf(drill.exercise));
  const figure = pick(chance, Object.keys(FIGURES));
  const form = pick(chance, FORMS[drill.exercise]);
  const scale = pick(chance, ['half', 'full'] as const);
  const paper = paperOf(figure, form);
  const count = drill.exercise === 'split' ? 2 : 1;
  const goals = goalsOn(paper, form, scale, count, chance);
  return {
    drill,
    figure,
    form,
    scale,
    darts: dartsOf(drill.exercise, form, chance),
    goals,
    shares: sharesOf(count, chance),
  };
}

function dartsOf(exercise: ExerciseId, form: BlockForm, chance: Chance): readonly string[] {
  return exercise === 'join' ? DARTS[form] : [pick(chance, DARTS[form])];
}

function sharesOf(count: number, chance: Chance): readonly number[] {
  if (count === 1) return [1];
  const first = pick(chance, SPLITS);
  return [first, 1 - first];
}
