import { pieceSet } from '../scene.ts';
import type { ToolSpec } from '../tool-spec.ts';
import { pieceOf, wholePiece } from './whole-piece.ts';

/** Copies the pieces, to treat them for the other fabric. */
export const copy: ToolSpec = {
  id: 'copy',
  // With one copy there is a set for each of the two.
  acts: ({ work }) =>
    work.pieces.some((piece) => piece.id.includes('@'))
      ? []
      : (['woven', 'knit'] as const).map((as) => ({
          id: `copy:${as}`,
          about: as,
          command: { do: 'copy', as },
        })),
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
  propose: (_scene, grip) => ({ command: { do: 'carry-notches', piece: pieceOf(grip.target) } }),
};

/** Piece name, number to cut, right side up: typed, so nothing to take hold of. */
export const label: ToolSpec = { id: 'label', targets: () => [], propose: () => undefined };
