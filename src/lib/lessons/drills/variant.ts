import { FIGURES } from '../../pattern/figures.ts';
import type { BlockForm, Piece } from '../../pattern/types.ts';
import { startWork } from '../../recipe/start.ts';
import { chanceFrom, pick, type Chance } from './chance.ts';
import { finishOf } from './kinds/finish.ts';
import { fullnessOf } from './kinds/fullness.ts';
import type { Draw } from './kinds/kind.ts';
import { lineOf } from './kinds/line.ts';
import { moveOf } from './kinds/move.ts';
import { princessOf } from './kinds/princess.ts';
import { parallelOf, severalOf } from './kinds/row.ts';
import { FIRST_EXERCISES, SCALES, type Drill, type ExerciseId, type Variant } from './types.ts';

type LaterId = Exclude<ExerciseId, (typeof FIRST_EXERCISES)[number]>;

/** Kinds that came later: the number that their seeds are counted by is theirs for good. */
const LATER: Readonly<Record<LaterId, { readonly number: number; readonly of: (draw: Draw) => Variant }>> = {
  finish: { number: 0, of: finishOf },
  fullness: { number: 1, of: fullnessOf },
  parallel: { number: 2, of: parallelOf },
  several: { number: 3, of: severalOf },
  princess: { number: 4, of: princessOf },
  line: { number: 5, of: lineOf },
};
/** Room for kinds to come, and beyond all seeds of the first kinds. */
const MOST_KINDS = 16;
const BEYOND = 8_000_000;

const first = (exercise: ExerciseId): number => (FIRST_EXERCISES as readonly string[]).indexOf(exercise);

/** Neighbouring seeds of one exercise, and one seed of different exercises, have nothing to do with each other. */
function chanceOf({ exercise, seed }: Drill): Chance {
  const at = first(exercise);
  return chanceFrom(
    at >= 0
      ? seed * FIRST_EXERCISES.length + at
      : BEYOND + seed * MOST_KINDS + LATER[exercise as LaterId].number,
  );
}

/** The front of a demo figure in a form, as it lies on the table. */
export const paperOf = (figure: string, form: BlockForm): Piece => startWork({ figure, form }).opened!;

/** What a drill asks for, worked out from it alone: the same drill is the same exercise on every machine. */
export function variantOf(drill: Drill): Variant {
  const chance = chanceOf(drill);
  const figure = pick(chance, Object.keys(FIGURES));
  const draw: Draw = {
    drill,
    chance,
    begin: (forms) => {
      const form = pick(chance, forms);
      // Drawn in any case: what follows is the same, whichever paper is asked for.
      const scale = pick(chance, SCALES);
      return { drill, figure, form, scale: drill.scale ?? scale, paper: paperOf(figure, form) };
    },
  };
  return first(drill.exercise) >= 0 ? moveOf(draw) : LATER[drill.exercise as LaterId].of(draw);
}
