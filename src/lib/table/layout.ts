import { compose, IDENTITY, rotationByAngle, translation } from '../geometry/isometry.ts';
import type { Box, Isometry, Point } from '../geometry/types.ts';
import type { Piece } from '../pattern/types.ts';
import type { Work } from '../recipe/types.ts';
import { isBack } from '../machines/scene.ts';
import { moved, pieceBox, unite } from './boxes.ts';

/** Where each piece lies on the table: a motion of its own coordinates. A view, never part of the work. */
export type Layout = ReadonlyMap<string, Isometry>;

/** Free desk between two pieces, mm at full size. */
const GAP = 70;

/** How many pieces stand beside each other before the next row, on a table this many times as wide as it is high. */
const across = (count: number, aspect: number): number =>
  count <= 2 ? (aspect > 0.7 ? 2 : 1) : aspect > 1.7 ? 3 : aspect > 0.85 ? 2 : 1;

/**
 * Lays pieces out in rows so that no two lie on each other; the fronts first, the back after them. A piece that keeps
 * its place when others change is easier to follow, so the first one always lies where it was drafted.
 */
export function layOut(pieces: readonly Piece[], placed: Work['placed'], aspect: number): Layout {
  const ordered = [...pieces.filter((piece) => !isBack(piece)), ...pieces.filter(isBack)];
  const columns = across(ordered.length, aspect);
  const layout = new Map<string, Isometry>();
  const first = ordered[0] && pieceBox(ordered[0]);
  if (!first) return layout;
  let [x, y, bottom] = [first.minX, first.minY, first.minY];
  ordered.forEach((piece, i) => {
    const box = pieceBox(piece);
    if (i > 0 && i % columns === 0) [x, y] = [first.minX, bottom + GAP];
    const lies = translation({ x: x - box.minX, y: y - box.minY });
    x += box.maxX - box.minX + GAP;
    bottom = Math.max(bottom, y + box.maxY - box.minY);
    layout.set(piece.id, movedBy(lies, placed[piece.id], box));
  });
  return layout;
}

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
