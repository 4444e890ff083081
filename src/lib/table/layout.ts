import { compose, IDENTITY, rotationByAngle, translation } from '../geometry/isometry.ts';
import type { Box, Isometry, Point } from '../geometry/types.ts';
import type { Piece } from '../pattern/types.ts';
import type { Work } from '../recipe/types.ts';
import { isBack } from '../machines/scene.ts';
import { moved, pieceBox, unite } from './boxes.ts';
import { late } from './late.ts';

/** Where each piece lies on the table: a motion of its own coordinates. A view, never part of the work. */
export type Layout = ReadonlyMap<string, Isometry>;

/** Free desk between two pieces, mm at full size. */
const GAP = 70;

/**
 * Lays pieces out in rows so that no two lie on each other, the fronts first, the back after them; in as many columns as
 * shows them largest on a table this many times as wide as it is high. The first one always lies where it was drafted. Fronts that were
 * parted side by side stay in that order, so that the edges which are sewn together face each other.
 */
export function layOut(pieces: readonly Piece[], placed: Work['placed'], aspect: number): Layout {
  const parted = pieces.filter((piece) => !isBack(piece));
  const fronts = late.fromTheRight?.(parted) ?? parted;
  const ordered = [...fronts, ...pieces.filter(isBack)];
  const boxes = ordered.map(pieceBox);
  let best: readonly Point[] = [];
  let size = Infinity;
  for (let columns = ordered.length; columns > 0; columns--) {
    const spots = inRows(boxes, columns);
    const all = unite(spots.map((p, i) => shifted(boxes[i]!, p)));
    const needed = Math.max(all.maxX - all.minX, (all.maxY - all.minY) * aspect);
    if (needed < size) [size, best] = [needed, spots];
  }
  return new Map(
    ordered.map((piece, i) => [piece.id, movedBy(translation(best[i]!), placed[piece.id], boxes[i]!)]),
  );
}

/** By how much each box is moved to stand in rows of `columns`, those of a row on their height: waist beside waist. */
function inRows(boxes: readonly Box[], columns: number): readonly Point[] {
  let [x, y, bottom] = [0, 0, 0];
  return boxes.map((box, i) => {
    if (i % columns === 0) {
      const row = unite(boxes.slice(i, i + columns));
      x = boxes[0]!.minX;
      y = i > 0 ? bottom + GAP - row.minY : 0;
      bottom = y + row.maxY;
    }
    const spot = { x: x - box.minX, y };
    x += box.maxX - box.minX + GAP;
    return spot;
  });
}

const shifted = (box: Box, by: Point): Box => ({
  minX: box.minX + by.x,
  minY: box.minY + by.y,
  maxX: box.maxX + by.x,
  maxY: box.maxY + by.y,
});

function movedBy(lies: Isometry, by: Work['placed'][string] | undefined, box: Box): Isometry {
  if (!by) return lies;
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  return compose(translation({ x: by.dx, y: by.dy }), compose(lies, rotationByAngle(middle, by.angle)));
}

export const placeOf = (layout: Layout, piece: string): Isometry => layout.get(piece) ?? IDENTITY;

/** The box of everything that lies on the table. */
export function tableBox(pieces: readonly Piece[], layout: Layout): Box | undefined {
  const boxes = pieces.map((piece) => moved(pieceBox(piece), placeOf(layout, piece.id)));
  return boxes.length > 0 ? unite(boxes) : undefined;
}

export const matrixOf = (m: Isometry): string =>
  `matrix(${[m.a, m.b, m.c, m.d, m.e, m.f].map((value) => Math.round(value * 1e5) / 1e5).join(' ')})`;

/** The middle of a box. */
export const middle = (box: Box): Point => ({ x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 });
