import { goalsOn } from '../places.ts';
import type { Variant } from '../types.ts';
import { lengthBetween, without, type Draw } from './kind.ts';

/** A seam from the shoulder or the armhole over the bust point to the waist; the side dart closes into it. */
export function princessOf({ chance, begun }: Draw): Variant {
  const { form, scale, paper } = begun;
  const goals = goalsOn(paper, form, scale, 1, chance, { only: ['shoulder', 'armhole'] });
  const smooth = lengthBetween(chance, scale, 16, 32);
  return { ...without(begun), darts: ['right'], goals, shares: [1], smooth };
}
