import { pieceSet } from '../scene.ts';
import type { ToolSpec } from '../tool-spec.ts';
import { pieceOf, wholePiece } from './whole-piece.ts';

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
  propose: (_scene, grip) => ({ command: { do: 'carry-notches', piece: pieceOf(grip.target) } }),
};
