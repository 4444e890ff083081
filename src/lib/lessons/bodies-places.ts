import type { Finding } from '../grading/types.ts';
import { FIGURES } from '../pattern/figures.ts';
import type { Measures } from '../pattern/block.ts';

/**
 * What is found of places that go along to another body as a share of a line or an edge, while the rule gives their band in mm: how far a
 * notch lies from the foot, where the nearest point of a line is, how near it passes the bust point. On a longer line the same share is another
 * length; the place has to be marked anew there, and the construction is none the worse for it.
 */
const SHARED: readonly string[] = [
  'notches-placed/before-foot',
  'notches-placed/after-foot',
  'connectors/foot',
  'line-passes/distance',
];

/** How many times as long as on the own body lengths can become on a figure: the largest ratio of two measures, 1 at least. */
export function growthTo(own: Measures | undefined, figure: string): number {
  const other = FIGURES[figure as keyof typeof FIGURES] as Measures | undefined;
  if (!own || !other) return 1;
  return Math.max(1, other.bust / own.bust, other.waist / own.waist, other.napeToWaist / own.napeToWaist);
}

const keyOf = (f: Finding): string => `${f.code} ${JSON.stringify(f.about ?? {})}`;

/** How far off a finding is, in its tolerances; undefined where it has no number. */
function errorOf({ measured, expected, tolerance }: Finding): number | undefined {
  if (measured === undefined || expected === undefined || !tolerance) return undefined;
  const [low, high] = typeof expected === 'number' ? [expected, expected] : expected;
  return Math.max(low - measured, measured - high, 0) / tolerance;
}

/**
 * Whether what is off on another body is a matter of a place alone: it goes along as a share while its band is in mm, or the hand was
 * near the edge of the band already and the error grew no more than the body did. `own`: the findings on the own body.
 */
export function isOfPlace(finding: Finding, own: readonly Finding[], growth: number): boolean {
  if (finding.state !== 'wrong') return false;
  if (SHARED.includes(finding.code)) return true;
  const error = errorOf(finding);
  const same = own.filter((one) => keyOf(one) === keyOf(finding)).map(errorOf);
  return error !== undefined && same.some((was) => was !== undefined && error <= was * growth);
}
