import { pick } from '../chance.ts';
import { goalsOn, type Wanted } from '../places.ts';
import type { Row, Variant } from '../types.ts';
import { DARTS, lengthBetween, without, type Begun, type Draw } from './kind.ts';

/** Alternate pivots lie 3/4 in to 1 in from the bust point (trade notes, read); the worked ones between the two, mm. */
export const PIVOTS = { near: 19, far: 25.4 } as const;
const RADIUS = 22;
/** What must be left of the edge beyond the outermost line, mm. */
const BESIDE = 10;

function laid(
  draw: Draw,
  begun: Begun,
  row: Row,
  only: NonNullable<Wanted['only']>,
): Pick<Variant, 'goals' | 'darts' | 'shares' | 'row'> {
  const { form, scale, paper } = begun;
  const room = ((row.count - 1) / 2) * row.spacing + BESIDE;
  return {
    darts: DARTS[form],
    goals: goalsOn(paper, form, scale, 1, draw.chance, { room, only }),
    shares: Array.from({ length: row.count }, () => 1 / row.count),
    row,
  };
}

/** Two parallel darts over alternate pivots. */
function parallelOf(draw: Draw): Variant {
  const { begun } = draw;
  const spacing = lengthBetween(draw.chance, begun.scale, 20, 36);
  const off = lengthBetween(draw.chance, begun.scale, 2, 12);
  const row = { count: 2, spacing, radius: RADIUS, off, step: 0 };
  // Round the armhole and at the waist a parallel line may leave the paper before it comes to its pivot.
  const only = ['shoulder', 'neckline', 'centre-front', 'side'] as const;
  return { ...without(begun), ...laid(draw, begun, row, only) };
}

/** A group of darts that run together at the bust point: clustered, with their points in a row, or as rays from the neck. */
function severalOf(draw: Draw): Variant {
  const { chance, begun } = draw;
  const count = pick(chance, [3, 3, 4]);
  const spacing = lengthBetween(chance, begun.scale, 14, 22);
  const off = lengthBetween(chance, begun.scale, 20, 32);
  const graduated = pick(chance, [true, false]);
  const step = lengthBetween(chance, begun.scale, 10, 14);
  const row = { count, spacing, off, step: graduated ? step : 0 };
  // From the side and from centre front the way to the bust point is too short for a row of points.
  const only = ['shoulder', 'neckline', 'armhole', 'waist'] as const;
  return { ...without(begun), ...laid(draw, begun, row, only) };
}

/** A row of either kind. */
export const rowOf = (draw: Draw): Variant =>
  draw.drill.exercise === 'parallel' ? parallelOf(draw) : severalOf(draw);
