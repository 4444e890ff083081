import { lerp } from '../../../src/lib/geometry/point.ts';
import { Fine } from '../../../src/lib/table/fine.ts';
import type { Sample } from './noise.ts';

/** The samples on the way from one place to another, in one movement (minimum jerk: Flash and Hogan 1985). px, ms. */
export function between(from: Sample, to: Sample, hz: number): Sample[] {
  const count = Math.max(1, Math.round(((to.t - from.t) * hz) / 1000));
  return Array.from({ length: count - 1 }, (_, i) => {
    const s = (i + 1) / count;
    return { ...lerp(from, to, s * s * s * (10 - 15 * s + 6 * s * s)), t: from.t + s * (to.t - from.t) };
  });
}

/** A movement lasts so long, ms. */
const MOVES = 300;
/** How well a person knows how much farther than what it holds the hand must go, as a part of it (ours). */
export const KNOWS = 0.2;

const ways = new Map<string, number>();
/** How many times as far a hand must go in one movement as what it holds shall go, px. */
export function wayFor(length: number, pointer: string, hz: number): number {
  if (length === 0) return 1;
  const goal = Math.ceil(4 * length) / 4;
  const key = `${pointer} ${hz} ${goal}`;
  const known = ways.get(key);
  if (known !== undefined) return known;
  const reached = (way: number): number => {
    const from = { x: 0, y: 0, t: 0 };
    const to = { x: way, y: 0, t: MOVES };
    const fine = new Fine(pointer, from);
    for (const one of between(from, to, hz)) fine.go(one);
    return fine.go(to).x;
  };
  let [low, high] = [goal, 4 * goal];
  for (let i = 0; i < 20; i++) {
    const way = (low + high) / 2;
    if (reached(way) < goal) low = way;
    else high = way;
  }
  const way = high / goal;
  ways.set(key, way);
  return way;
}
