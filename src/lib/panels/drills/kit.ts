import type { DrillKit } from '../../lessons/drills/kits/kit.ts';
import type { ExerciseId } from '../../lessons/drills/types.ts';
import type { KindWords } from '../../strings/drill-words/kind-words.ts';

/** A kit of drills with its words. */
export interface WordedKit extends DrillKit {
  readonly words: KindWords;
}

const moving = () => import('./moving.ts');
const row = () => import('./row.ts');
const KITS: Readonly<Record<ExerciseId, () => Promise<{ readonly kit: WordedKit }>>> = {
  slash: moving,
  pivot: moving,
  angle: moving,
  split: moving,
  join: moving,
  finish: () => import('./finish.ts'),
  fullness: () => import('./fullness.ts'),
  parallel: row,
  several: row,
  princess: () => import('./princess.ts'),
  line: () => import('./line.ts'),
};

/** Fetches what drills of that kind are made of, and of no other. Rejects where it cannot be fetched. */
export const fetchKit = async (exercise: ExerciseId): Promise<WordedKit> => (await KITS[exercise]()).kit;
