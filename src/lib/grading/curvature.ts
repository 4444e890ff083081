import { cross, dot, norm, sub } from '../geometry/point.ts';
import { derivativeAt, pointAt, tangentAt } from '../geometry/segment.ts';
import { atan2 } from '../geometry/trig.ts';
import type { Chain, Point, Segment } from '../geometry/types.ts';

const SAMPLES = 6;

/** The second derivative of a segment by t, mm. */
function secondAt(s: Segment, t: number): Point {
  if (s.kind === 'line') return { x: 0, y: 0 };
  const r = 1 - t;
  const part = (a: number, b: number, c: number, d: number) =>
    6 * (r * (c - 2 * b + a) + t * (d - 2 * c + b));
  return { x: part(s.a.x, s.b.x, s.c.x, s.d.x), y: part(s.a.y, s.b.y, s.c.y, s.d.y) };
}

/** The tightest place of a chain: its radius in mm (Infinity when straight) and where; κ = |P′ × P″| / |P′|³, sampled. */
export function tightest(chain: Chain): { readonly radius: number; readonly at: Point } {
  let bend = 0;
  let place = chain[0]!.a;
  for (const s of chain) {
    if (s.kind === 'line') continue;
    for (let i = 0; i <= SAMPLES; i++) {
      const t = i / SAMPLES;
      const first = derivativeAt(s, t);
      const speed = norm(first);
      if (speed === 0) continue;
      const k = Math.abs(cross(first, secondAt(s, t))) / (speed * speed * speed);
      if (k > bend) {
        bend = k;
        place = pointAt(s, t);
      }
    }
  }
  return { radius: 1 / bend, at: place };
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
      const d = norm(sub(p, centre));
      if (d > reached) {
        reached = d;
        peak = p;
      } else if (reached - d > worst.drop) worst = { drop: reached - d, from: peak, to: p };
    }
  }
  return worst;
}
