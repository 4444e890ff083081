import { chainBounds } from '../../geometry/chain.ts';
import { contains, signedArea } from '../../geometry/outline.ts';
import type { Point } from '../../geometry/types.ts';
import type { Piece } from '../../pattern/types.ts';
import { sub } from '../../geometry/point.ts';
import { frontPieces, pieceSet } from '../scene.ts';
import type { ToolSpec, ToolTarget } from '../tool.ts';

/** Where a piece as a whole is taken hold of, mm: on the paper of its largest part, as near the middle as that goes. */
export function centreOf(piece: Piece): Point {
  const chains = piece.parts.map((part) => part.edges.flatMap((edge) => edge.chain));
  const areas = chains.map((chain) => Math.abs(signedArea(chain)));
  const largest = chains[areas.indexOf(Math.max(...areas))] ?? [];
  const { minX, maxX, minY, maxY } = chainBounds(largest);
  const down = [0.5, 0.6, 0.4, 0.7, 0.3, 0.8, 0.2, 0.9, 0.1];
  const places = down.map((part) => ({ x: (minX + maxX) / 2, y: minY + (maxY - minY) * part }));
  return places.find((place) => contains(largest, place, 5) === 'inside') ?? places[0]!;
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
