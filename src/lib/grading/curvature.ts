import { cross, distance, dot } from '../geometry/point.ts';
import { pointAt, tangentAt } from '../geometry/segment.ts';
import { atan2 } from '../geometry/trig.ts';
import type { Chain, Point } from '../geometry/types.ts';

const SAMPLES = 6;

/**
 * The tightest place of a chain: its radius in mm (Infinity when straight) and where; κ = |P′ × P″| / |P′|³, sampled. (Both
 * derivatives are taken a third and a sixth of their size, from the differences of the control points.)
 */
export function tightest(chain: Chain): { readonly radius: number; readonly at: Point } {
  let bend = 0;
  let segment = chain[0]!;
  let place = 0;
  for (const s of chain) {
    if (s.kind === 'line') continue;
    const { a, b, c, d } = s;
    const x0 = b.x - a.x;
    const x1 = c.x - b.x;
    const x2 = d.x - c.x;
    const y0 = b.y - a.y;
    const y1 = c.y - b.y;
    const y2 = d.y - c.y;
    for (let i = 0; i <= SAMPLES; i++) {
      const t = i / SAMPLES;
      const r = 1 - t;
      const x = r * r * x0 + 2 * r * t * x1 + t * t * x2;
      const y = r * r * y0 + 2 * r * t * y1 + t * t * y2;
      const u = r * (x1 - x0) + t * (x2 - x1);
      const v = r * (y1 - y0) + t * (y2 - y1);
      const square = x * x + y * y;
      if (square === 0) continue;
      const k = (2 * Math.abs(x * v - y * u)) / (3 * square * Math.sqrt(square));
      if (k > bend) {
        bend = k;
        segment = s;
        place = t;
      }
    }
  }
  return { radius: 1 / bend, at: pointAt(segment, place) };
}

/** The sharpest break of direction at a joint of a chain, radians from 0 to π, and where. */
export function sharpestJoint(chain: Chain): { readonly angle: number; readonly at: Point } {
  let angle = 0;
  let place = chain[0]!.a;
  for (let i = 1; i < chain.length; i++) {
    const u = tangentAt(chain[i - 1]!, 1);
    const v = tangentAt(chain[i]!, 0);
    const turn = Math.abs(atan2(cross(u, v), dot(u, v)));
    if (turn > angle) {
      angle = turn;
      place = chain[i]!.a;
    }
  }
  return { angle, at: place };
}

/**
 * How far a chain comes back towards `centre` while walking from `from` mm to its end: the largest drop of the distance below
 * what it had reached, mm (0 where the distance only grows), and the two places. Sampled.
 */
export function largestDrop(chain: Chain, from: { segment: number; t: number }, centre: Point) {
  let reached = -1;
  let peak = centre;
  let worst = { drop: 0, from: centre, to: centre };
  for (let n = from.segment; n < chain.length; n++) {
    const first = n === from.segment ? from.t : 0;
    for (let i = 0; i <= SAMPLES; i++) {
      const p = pointAt(chain[n]!, first + (1 - first) * (i / SAMPLES));
      const d = distance(p, centre);
      if (d > reached) {
        reached = d;
        peak = p;
      } else if (reached - d > worst.drop) worst = { drop: reached - d, from: peak, to: p };
    }
  }
  return worst;
}
