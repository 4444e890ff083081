import type { Cubic, Point } from './types.ts';
import { add, norm, scale, sub, unit } from './point.ts';
import { cubic } from './segment.ts';
import { angleBetween } from './trig.ts';

/** A break at a joint of less than this (radians; 6°) is none that was meant: its control points were carried to another body. */
const MEANT = 0.1;

/**
 * Cubics end to end from their control points in a row (3 n + 1 of them). Where two cubics meet at all but one direction they are given
 * one: each handle keeps its length and turns to the middle between the two; greater breaks stay.
 */
export function smoothedCubics(control: readonly Point[]): readonly Cubic[] {
  const p = control.slice();
  for (let i = 3; i < p.length - 1; i += 3) {
    const into = sub(p[i]!, p[i - 1]!);
    const outOf = sub(p[i + 1]!, p[i]!);
    if (!(norm(into) > 0 && norm(outOf) > 0)) continue;
    const turn = Math.abs(angleBetween(into, outOf));
    if (turn === 0 || turn > MEANT) continue;
    const way = unit(add(unit(into), unit(outOf)));
    p[i - 1] = sub(p[i]!, scale(way, norm(into)));
    p[i + 1] = add(p[i]!, scale(way, norm(outOf)));
  }
  const out: Cubic[] = [];
  for (let i = 0; i + 3 < p.length; i += 3) out.push(cubic(p[i]!, p[i + 1]!, p[i + 2]!, p[i + 3]!));
  return out;
}
