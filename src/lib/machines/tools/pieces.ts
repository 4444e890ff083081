import { chainBounds } from '../../geometry/chain.ts';
import type { Point } from '../../geometry/types.ts';
import type { Piece } from '../../pattern/types.ts';
import { sub } from '../../geometry/point.ts';
import { frontPieces, pieceSet } from '../scene.ts';
import type { ToolSpec, ToolTarget } from '../tool.ts';

/** The middle of a piece's box, mm: where a piece as a whole is taken hold of. */
export function centreOf(piece: Piece): Point {
  const boxes = piece.parts.map((part) => chainBounds(part.edges.flatMap((edge) => edge.chain)));
  const mid = (low: 'minX' | 'minY', high: 'maxX' | 'maxY') =>
    (Math.min(...boxes.map((box) => box[low])) + Math.max(...boxes.map((box) => box[high]))) / 2;
  return { x: mid('minX', 'maxX'), y: mid('minY', 'maxY') };
}

const wholePiece = (piece: Piece, how: ToolTarget['how'], done = false): ToolTarget => ({
  id: `piece:${piece.id}`,
  kind: 'piece',
  point: centreOf(piece),
  piece: piece.id,
  how,
  ref: piece.id,
  done,
});
const idOf = (target: string): string => target.slice('piece:'.length);

/** Lays each rigid part of a piece on the block, openings closed. */
export const overlay: ToolSpec = {
  id: 'overlay',
  acts: (scene) =>
    frontPieces(scene).map((piece) => ({
      id: `overlay:${piece.id}`,
      about: piece.id,
      command: { do: 'overlay', piece: piece.id },
    })),
  targets: (scene) =>
    frontPieces(scene).map((piece) => wholePiece(piece, 'tap', scene.work.overlaid.includes(piece.id))),
  propose: (_scene, grip) => ({ command: { do: 'overlay', piece: idOf(grip.target) } }),
};

/** Copies the pieces, to treat them for the other fabric. */
export const copy: ToolSpec = {
  id: 'copy',
  acts: ({ work }) =>
    (['woven', 'knit'] as const)
      .filter((as) => !work.pieces.some((piece) => piece.id.endsWith(`@${as}`)))
      .map((as) => ({ id: `copy:${as}`, about: as, command: { do: 'copy', as } })),
  targets: () => [],
  propose: () => undefined,
};

/** Carries the notches out to the cut line. */
export const carryNotches: ToolSpec = {
  id: 'carry-notches',
  acts: (scene) =>
    pieceSet(scene.work, scene.fabric).map((piece) => ({
      id: `carry:${piece.id}`,
      about: piece.id,
      command: { do: 'carry-notches', piece: piece.id },
    })),
  targets: (scene) =>
    pieceSet(scene.work, scene.fabric).map((piece) => wholePiece(piece, 'tap', piece.notchesCarried)),
  propose: (_scene, grip) => ({ command: { do: 'carry-notches', piece: idOf(grip.target) } }),
};

/** Moves a piece about on the table; the work stays what it is. */
export const place: ToolSpec = {
  id: 'place',
  targets: (scene) => pieceSet(scene.work, scene.fabric).map((piece) => wholePiece(piece, 'carry')),
  press: (_scene, _point, over) =>
    over.piece === undefined ? undefined : { target: `piece:${over.piece}`, how: 'carry' },
  propose: (scene, grip) => {
    const piece = idOf(grip.target);
    const lies = scene.work.placed?.[piece] ?? { dx: 0, dy: 0, angle: 0 };
    const by = sub(grip.at, grip.from);
    return { command: { do: 'place', piece, dx: lies.dx + by.x, dy: lies.dy + by.y, angle: lies.angle } };
  },
};

/** Piece name, number to cut, right side up: typed, so nothing to take hold of. */
export const label: ToolSpec = { id: 'label', targets: () => [], propose: () => undefined };
