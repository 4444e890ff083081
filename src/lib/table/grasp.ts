import { distance } from '../geometry/point.ts';
import type { Point } from '../geometry/types.ts';

/** How near a press must be to a handle, px: a finger is wider than a mouse. */
const NEAR: Readonly<Record<string, number>> = { mouse: 14, pen: 22, touch: 30 };

/** How near a press of a pointer must be to what it takes hold of, px; `pointer` as in `PointerEvent.pointerType`. */
export const nearFor = (pointer: string): number => NEAR[pointer] ?? NEAR['mouse']!;

/** How near something must be to be snapped to, px; and mm, so that a small view does not decide more than a large one. */
const REACH = 11;
const MOST = 6;
/** The reach of a tool in mm where a mm is `k` px large. A line drawn in one go (`trail`) is always seen as a whole. */
export const snapReach = (k: number, trail?: boolean): number =>
  trail ? REACH / k : Math.min(REACH / k, MOST);
/** How near a press must be to a line or an edge to be on it, px. */
export const reachFor = (pointer: string): number => Math.max(REACH, (3 / 4) * nearFor(pointer));

/** How much of that reach has the handle of a whole edge or line: beside it a press means the place that it came down on. */
const PLACE = 0.4;
/** And the other handles of such a tool, px: farther from them a press is meant for a new place. */
const OTHERS = 18;

interface Handle {
  readonly at: Point;
  readonly target?: { readonly anywhere?: true };
}

/** The nearest of the handles that a press takes hold of. px. */
export function graspedAt<T extends Handle>(
  handles: readonly T[],
  press: Point,
  pointer: string,
): T | undefined {
  let best: T | undefined;
  const near = nearFor(pointer);
  let least = handles.some(({ target }) => target?.anywhere) ? Math.min(near, OTHERS) : near;
  for (const handle of handles) {
    const d = distance(handle.at, press);
    if (d <= least && (d <= PLACE * near || !handle.target?.anywhere)) [least, best] = [d, handle];
  }
  return best;
}
