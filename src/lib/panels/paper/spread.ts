import { distance } from '../../geometry/point.ts';
import type { Box, Point } from '../../geometry/types.ts';

/** Where a number stands that had no room at its place, and the line that leads from its ring to there. */
export interface Stood {
  readonly at: Point;
  readonly lead?: readonly [Point, Point];
}

/** Ways to go round a place, upwards first. */
const WAYS = [
  [0, -1],
  [0, 1],
  [-0.7, -0.7],
  [0.7, -0.7],
  [-0.7, 0.7],
  [0.7, 0.7],
  [-1, 0],
  [1, 0],
] as const;
/** How far a number may stand off, in radii. */
const STEPS = [2.2, 3, 4, 5, 6];

/**
 * Lets numbers in rings of radius `ring` stand clear of each other and of the points in `bare`: each at its place or as near to it as
 * there is room in the box. Where there is none it stays. All in one unit.
 */
export function spread(
  places: readonly (Point | undefined)[],
  ring: number,
  box: Box,
  bare: readonly Point[],
): (Stood | undefined)[] {
  const taken: Point[] = [];
  const fits = (p: Point): boolean =>
    p.x >= box.minX &&
    p.x <= box.maxX &&
    p.y >= box.minY &&
    p.y <= box.maxY &&
    taken.every((q) => distance(p, q) >= 2.1 * ring) &&
    bare.every((q) => distance(p, q) >= 1.2 * ring);
  return places.map((place) => {
    if (!place) return undefined;
    const around = STEPS.flatMap((step) =>
      WAYS.map(([x, y]) => ({ x: place.x + x * step * ring, y: place.y + y * step * ring })),
    );
    const at = [place, ...around].find(fits) ?? place;
    taken.push(at);
    const d = distance(at, place);
    if (d === 0) return { at };
    const rim = { x: at.x + ((place.x - at.x) * ring) / d, y: at.y + ((place.y - at.y) * ring) / d };
    return { at, lead: [rim, place] };
  });
}
