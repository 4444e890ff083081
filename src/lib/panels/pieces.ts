import { piecesOf } from '../pattern/copy.ts';
import type { Piece } from '../pattern/types.ts';

/** The cut pieces of a fabric: its copy once there is one, otherwise the first ones. */
export function cutPieces(pieces: readonly Piece[], fabric: string): readonly Piece[] {
  const cut = pieces.filter((piece) => /^(upper|lower)/.test(piece.id));
  const copy = cut.filter((piece) => piece.id.endsWith(`@${fabric}`));
  return copy.length > 0 ? copy : cut.filter((piece) => !piece.id.includes('@'));
}

/** All pieces that are sewn in a fabric, the back too: what gets allowances and labels. */
export const sewnPieces = (pieces: readonly Piece[], fabric: string): readonly Piece[] =>
  cutPieces(pieces, fabric).length === 0 ? [] : piecesOf(pieces, fabric);
