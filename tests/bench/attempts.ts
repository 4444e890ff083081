import { sampleAttempt } from '../recipe/sample.ts';
import type { Attempt, BlockChoice } from '../../src/lib/recipe/types.ts';

const FIGURES = ['F1', 'F2', 'F3', 'F4', 'F5'] as const;

/** Numbers in [0, 1), the same for the same seed (a linear congruence; nothing here hangs on its quality). */
function dice(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 1103515245 + 12345) % 2147483648;
    return state / 2147483648;
  };
}

/**
 * Whole attempts of the lesson, each right in every step and no two alike: half on demo figures and half on measurements of
 * their own, knit and woven in turn, each with its own line, notches and choice of the part that turns.
 */
export function distinctAttempts(count: number, seed = 20_26): Attempt[] {
  const roll = dice(seed);
  const between = (low: number, high: number): number => low + (high - low) * roll();
  return Array.from({ length: count }, (_, i): Attempt => {
    const bust = between(800, 1040);
    const own = { bust, waist: bust - between(165, 185), napeToWaist: between(370, 400) };
    const block: BlockChoice = i % 4 < 2 ? { figure: FIGURES[i % 5]! } : { measures: own };
    return sampleAttempt(block, i % 2 === 0 ? 'knit' : 'woven', {
      shoulder: between(0.35, 0.55),
      side: between(0.4, 0.6),
      d1: between(12, 23),
      d2: between(12, 23),
      notches: [between(40, 46), between(32, 37), between(36, 39), between(44, 49)],
      turn: i % 3 === 0 ? 'rest' : 'freed',
      separateFirst: i % 5 === 4,
      seed: i,
    });
  });
}
