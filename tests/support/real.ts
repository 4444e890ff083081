import fc from 'fast-check';

/** Even over 30 bits: finer than any measure here needs. */
const STEPS = 2 ** 30;

/**
 * Numbers spread evenly over a range. (fast-check's own `double` is even over the bits, so that of a range which holds zero nearly
 * all it gives lie next to zero.)
 */
export const real = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: STEPS }).map((n) => min + ((max - min) * n) / STEPS);
