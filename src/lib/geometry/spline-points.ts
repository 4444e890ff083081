import type { Chain, Point } from './types.ts';
import { chainLength, pointAtLength } from './chain.ts';
import { nearestOnSegment } from './nearest.ts';
import { splineThrough } from './spline.ts';

/** More points are no help to a hand that shapes a line by them. */
const MOST = 16;

/**
 * Few points of a chain, its ends among them, through which the spline runs near to the chain: within about `near` mm, or with 16
 * points. Each one more is put where the spline is farthest off.
 */
export function splinePoints(chain: Chain, near: number): readonly Point[] {
  const whole = chainLength(chain);
  let at = [0, whole / 2, whole];
  for (;;) {
    const points = at.map((mm) => pointAtLength(chain, mm));
    const spline = splineThrough(points);
    let worst = near;
    let place: number | undefined;
    // Points that fell together would leave fewer segments than gaps.
    if (spline.length === at.length - 1 && at.length < MOST)
      for (let i = 1; i < at.length; i++) {
        const middle = (at[i - 1]! + at[i]!) / 2;
        const off = nearestOnSegment(spline[i - 1]!, pointAtLength(chain, middle)).distance;
        if (off > worst) [worst, place] = [off, middle];
      }
    if (place === undefined) return points;
    const next = place;
    at = [...at, next].sort((a, b) => a - b);
  }
}
