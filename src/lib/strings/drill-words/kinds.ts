import type { ExerciseId } from '../../lessons/drills/types.ts';

/** The kinds of drills, as they are chosen. */
export const EXERCISE_NAMES: Readonly<Record<ExerciseId, string>> = {
  slash: 'Move a dart: slash and spread',
  pivot: 'Move a dart: pin and pivot',
  angle: 'Move a dart by its typed angle',
  split: 'Share a dart between two places',
  join: 'Bring two darts into one',
  finish: 'Back off, true and cap',
  fullness: 'Gathers, tucks or ease',
  parallel: 'Parallel darts from alternate pivots',
  several: 'Clustered or radiating darts',
  princess: 'Princess seam from shoulder or armhole',
  line: 'A line beside the bust point',
  block: 'Find your way on the block',
  ready: 'Pieces made ready to be sewn',
};
