import type { Chain, Cubic, Point } from '../geometry/types.ts';
import type { Dart, Edge, EdgeRole, Part, Piece, Side } from './types.ts';
import { add, distance, scale, sub } from '../geometry/point.ts';
import { cubic } from '../geometry/segment.ts';
import { chainLength } from '../geometry/chain.ts';
import { IDENTITY } from '../geometry/isometry.ts';
import { cos, radians, sin } from '../geometry/trig.ts';

/** A point of the draft, mm. */
export const at = (x: number, y: number): Point => ({ x, y });

/** Unit vector at an angle in degrees, clockwise on the screen from the x axis. */
export const heading = (degrees: number): Point => at(cos(radians(degrees)), sin(radians(degrees)));

/** A cubic from a to d that leaves along u and arrives along v, with handles of k of the chord. */
export function curve(a: Point, u: Point, d: Point, v: Point, k = 1 / 3): Cubic {
  const h = k * distance(a, d);
  return cubic(a, add(a, scale(u, h)), sub(d, scale(v, h)), d);
}

/** The front neckline leaves the shoulder at 75°, the back at 105°: together smooth across the shoulder seam (ours). */
export const NECK_ANGLE = 75;

/** An edge of the block as drafted, its own origin. */
export function edge(
  id: string,
  role: EdgeRole,
  side: Side,
  chain: Chain,
  partner?: string,
  dart?: string,
): Edge {
  const origin = { edge: id, from: 0, to: chainLength(chain) };
  return { id, role, side, chain, origin, partner, dart };
}

/** A piece of one sheet, nothing done to it yet. */
export function piece(id: string, part: Part, darts: readonly Dart[]): Piece {
  return {
    id,
    parts: [part],
    hinges: [],
    darts,
    notches: [],
    seam: undefined,
    treatments: [],
    finished: undefined,
    fullness: undefined,
    smoothed: undefined,
    allowances: {},
    corners: [],
    notchesCarried: false,
    label: undefined,
    grainline: undefined,
  };
}

export const sheet = (id: string, edges: readonly Edge[], landmarks: Part['landmarks']): Part => ({
  id,
  edges,
  lines: [],
  landmarks,
  grain: 'kept',
  motion: IDENTITY,
});
