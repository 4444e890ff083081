import { frontPieces } from '../scene.ts';
import type { ToolSpec } from '../tool-spec.ts';
import { pieceOf, wholePiece } from './whole-piece.ts';

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
  propose: (_scene, grip) => ({ command: { do: 'overlay', piece: pieceOf(grip.target) } }),
};
