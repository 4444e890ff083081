import { applyTo, rotationByAngle } from '../geometry/isometry.ts';
import { unit } from '../geometry/point.ts';
import type { Point } from '../geometry/types.ts';
import { done, refuse, type Outcome } from './outcome.ts';
import type { Piece } from './types.ts';
import { openPiece } from './with.ts';

/** Length of a grainline as it is drawn, mm. */
const DRAWN = 150;

/**
 * Direction of the block's centre front (towards the waist) in the part of a piece that keeps the grain. On a part that was
 * turned the old grain is void; when all of them were, the first one's is given, turned with it.
 */
export function grainDirection(piece: Piece): Point {
  const part = piece.parts.find((p) => p.grain === 'kept') ?? piece.parts[0];
  // The centre front stood upright on the block: the motion takes (0, 1) to its second column.
  return part ? unit({ x: part.motion.c, y: part.motion.d }) : { x: 0, y: 1 };
}

/** Draw a grainline through `at`, `angle` radians (clockwise on the screen) off the centre front, `length` mm long. */
export function setGrain(piece: Piece, at: Point, angle: number, length = DRAWN): Outcome<Piece> {
  if (!(Math.abs(angle) < 100 && length > 0)) return refuse('bad-number', { angle, length });
  const way = applyTo(rotationByAngle({ x: 0, y: 0 }, angle), grainDirection(piece));
  const half = { x: (way.x * length) / 2, y: (way.y * length) / 2 };
  const next = openPiece(piece);
  next.grainline = {
    from: { x: at.x - half.x, y: at.y - half.y },
    to: { x: at.x + half.x, y: at.y + half.y },
  };
  return done(next);
}
