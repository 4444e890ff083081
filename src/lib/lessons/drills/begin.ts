import type { FigureCode } from '../../pattern/figures.ts';
import type { Piece } from '../../pattern/types.ts';
import type { BlockForm } from '../../pattern/block.ts';
import { chanceFrom, pick, type Chance } from './chance.ts';
import type { Draw } from './kinds/kind.ts';
import { FIRST_EXERCISES, SCALES, type Drill, type ExerciseId, type Scale } from './types.ts';

type LaterId = Exclude<ExerciseId, (typeof FIRST_EXERCISES)[number]>;

/** Kinds that came later: the number that their seeds are counted by is theirs for good. */
const LATER: Readonly<Record<LaterId, number>> = {
  finish: 0,
  fullness: 1,
  parallel: 2,
  several: 3,
  princess: 4,
  line: 5,
  block: 7,
  ready: 8,
};
/** The same for second draws. */
const SECOND: Readonly<Partial<Record<ExerciseId, number>>> = { join: 6 };
/** Room for kinds to come, and beyond all seeds of the first kinds. */
const MOST_KINDS = 16;
const BEYOND = 8_000_000;

/** What is drawn from. The lists and their order never change: old links hang on them. */
const FIGURES: readonly FigureCode[] = ['F1', 'F2', 'F3', 'F4', 'F5'];
const ANY = ['waist', 'side', 'two-dart'] as const;
const ONE_DART = ['waist', 'side'] as const;
const TWO_DARTS = ['two-dart'] as const;
const FORMS: Readonly<Record<ExerciseId, readonly BlockForm[]>> = {
  slash: ANY,
  pivot: ANY,
  angle: ANY,
  split: ONE_DART,
  join: TWO_DARTS,
  finish: ANY,
  fullness: ONE_DART,
  parallel: ONE_DART,
  several: ONE_DART,
  princess: TWO_DARTS,
  line: ['side'],
  block: ANY,
  ready: ['side'],
};

/** Neighbouring seeds of one exercise, and one seed of different exercises, have nothing to do with each other. */
function chanceOf({ exercise, seed, draw }: Drill): Chance {
  const first = (FIRST_EXERCISES as readonly string[]).indexOf(exercise);
  if (first >= 0 && !draw) return chanceFrom(seed * FIRST_EXERCISES.length + first);
  return chanceFrom(BEYOND + seed * MOST_KINDS + (draw ? SECOND[exercise]! : LATER[exercise as LaterId]));
}

/** What is drawn before all else: the block, and the scale of the lengths. The rest is drawn by `chance`, once. */
export interface Beginning {
  readonly drill: Drill;
  readonly chance: Chance;
  readonly figure: FigureCode;
  readonly form: BlockForm;
  readonly scale: Scale;
}

/** The beginning of a drill: which block is wanted is known before the block is there. */
export function beginningOf(drill: Drill): Beginning {
  const chance = chanceOf(drill);
  const figure = pick(chance, FIGURES);
  const form = pick(chance, FORMS[drill.exercise]);
  // Drawn in any case: what follows is the same, whichever paper is asked for.
  const scale = pick(chance, SCALES);
  return { drill, chance, figure, form, scale: drill.scale ?? scale };
}

/** What the kinds draw their variants from. `paper`: the front of that figure in that form, as it lies on the table. */
export const drawOn = ({ chance, ...begun }: Beginning, paper: Piece): Draw => ({
  drill: begun.drill,
  chance,
  begun: { ...begun, paper },
});
