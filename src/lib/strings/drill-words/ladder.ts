import type { HintLadder } from '../../lessons/types.ts';

/** The hints of a step in which whatever is off leads to the same ones. */
export const always = (...rungs: readonly string[]): readonly HintLadder[] => [{ codes: [], rungs }];
