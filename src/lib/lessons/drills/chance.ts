/** Numbers in [0, 1) that look like chance and are the same everywhere for the same seed. */
export type Chance = () => number;

const MODULUS = 2_147_483_647;
const MULTIPLIER = 48_271;

/**
 * The minimal standard generator of Park and Miller with the multiplier of 1993 (*Communications of the ACM* 31(10), 1988, and 36(7),
 * 1993; memory): whole numbers below 2^47 only, so every engine gives the same row. `seed`: a whole number from 0.
 */
export function chanceFrom(seed: number): Chance {
  let state = (seed % (MODULUS - 1)) + 1;
  const next = (): number => (state = (state * MULTIPLIER) % MODULUS);
  // Small seeds begin with small numbers; a few rounds part them.
  for (let i = 0; i < 4; i++) next();
  return () => (next() - 1) / (MODULUS - 1);
}

/** One of a list. Throws RangeError for an empty one. */
export function pick<T>(chance: Chance, from: readonly T[]): T {
  const found = from[Math.floor(chance() * from.length)];
  if (found === undefined) throw new RangeError('there is nothing to pick from');
  return found;
}
