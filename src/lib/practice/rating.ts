import type { Finding } from '../grading/types.ts';
import type { Occasion } from './occasions.ts';

/** How well something was done, as the scheduler counts it. Nobody rates themself: it follows from what was measured. */
export type Rating = 'again' | 'hard' | 'good' | 'easy';

/** Where the ratings divide. All ours; no published source was used. */
export const THRESHOLDS = {
  /** From so many hints on the last rung was read, which says what to do: the hand did not know it. */
  manyHints: 3,
  /** Beyond this part of the tolerance it was right, but only just. */
  close: 0.75,
  /** Up to this part of the tolerance it was exact. */
  exact: 0.25,
  /** Slower than so many times one's own usual: the hand had to search. */
  slow: 3,
  /** So many unaided earlier times are needed before there is a usual time to compare with. */
  usual: 3,
} as const;

/** What of an occasion the rating follows from. */
export type Rated = Pick<Occasion, 'result' | 'wrong' | 'error' | 'hints' | 'worked' | 'seconds'> & {
  /** All its mistakes were made good by second chances: the credit is restored. */
  readonly madeGood: boolean;
};

/**
 * The rating of an occasion. `usual`: the learner's own usual time for this skill in seconds; undefined when none is known, and
 * then time does not count: nobody is held against the time of others. undefined where there is nothing to rate: unfinished work
 * is not wrong.
 *
 * - again: it was not got right (unless a second chance made it good, then hard), or only after seeing it worked, or with
 *   all the hints;
 * - hard: right with a hint, at a later try (unless a second chance restored the credit), only just within the tolerance, or
 *   slowly;
 * - easy: right at once without help, to a quarter of the tolerance, and not slower than usual;
 * - good: everything between.
 */
export function ratingOf(rated: Rated, usual?: number): Rating | undefined {
  const { result, error, hints, worked, seconds, madeGood } = rated;
  const wrong = madeGood ? 0 : rated.wrong;
  if (result === 'notReady') return undefined;
  if (result === 'needsWork') return madeGood ? 'hard' : 'again';
  if (worked || hints >= THRESHOLDS.manyHints) return 'again';
  const off = error ?? 0;
  const slow = usual !== undefined && seconds > THRESHOLDS.slow * usual;
  if (hints > 0 || wrong > 0 || off > THRESHOLDS.close || slow) return 'hard';
  // Where nothing has a tolerance, nothing shows that it was exact.
  const exact = error !== null && off <= THRESHOLDS.exact;
  return exact && usual !== undefined && seconds <= usual ? 'easy' : 'good';
}

/** The middle of the times, s; undefined while there are too few. */
export function usualTime(seconds: readonly number[]): number | undefined {
  if (seconds.length < THRESHOLDS.usual) return undefined;
  const sorted = [...seconds].sort((a, b) => a - b);
  return (sorted[(sorted.length - 1) >> 1]! + sorted[sorted.length >> 1]!) / 2;
}

/**
 * The largest error in a mark, in tolerances: 1 is just allowed. null where no finding has both a measure and a tolerance. A
 * range counts from its nearer end, and what lies in it has no error.
 */
export function errorOf(findings: readonly Finding[]): number | null {
  let worst: number | null = null;
  for (const { state, measured, expected, tolerance } of findings) {
    if (state !== 'right' && state !== 'wrong') continue;
    if (measured === undefined || expected === undefined || !tolerance) continue;
    const [low, high] = typeof expected === 'number' ? [expected, expected] : expected;
    const off = Math.max(low - measured, measured - high, 0) / tolerance;
    if (Number.isFinite(off)) worst = Math.max(worst ?? 0, Math.min(off, MOST));
  }
  return worst;
}

/** More is not told apart: the wrong thing was done. */
const MOST = 1e6;

/** Codes of what a mark found wrong or missing, each once, sorted. */
export const openCodes = (findings: readonly Finding[]): readonly string[] =>
  [
    ...new Set(
      findings.filter(({ state }) => state === 'wrong' || state === 'missing').map(({ code }) => code),
    ),
  ].sort();
