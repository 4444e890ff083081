import { pick, type Chance } from '../chance.ts';
import { goalsOn } from '../places.ts';
import type { Variant } from '../types.ts';
import { DARTS, without, type Draw } from './kind.ts';

/** Shares of the angle for a split, in tenths, so that the angles can be worked out by hand. */
const SPLITS = [0.3, 0.4, 0.5, 0.6, 0.7] as const;

/** A dart is moved, shared or brought together with another. The order of draws is fixed: old links hang on it. */
export function moveOf({ drill, chance, begun }: Draw): Variant {
  const { form, scale, paper } = begun;
  const count = drill.exercise === 'split' ? 2 : 1;
  const goals = goalsOn(paper, form, scale, count, chance);
  const darts = drill.exercise === 'join' ? DARTS[form] : [pick(chance, DARTS[form])];
  return { ...without(begun), darts, goals, shares: sharesOf(count, chance) };
}

function sharesOf(count: number, chance: Chance): readonly number[] {
  if (count === 1) return [1];
  const first = pick(chance, SPLITS);
  return [first, 1 - first];
}
