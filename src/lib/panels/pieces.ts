import { piecesOf } from '../pattern/copy.ts';
import { isFinished } from '../pattern/finished.ts';
import type { Piece } from '../pattern/types.ts';

/** Pieces of the front that can be made ready to cut out: cut apart, or with a dart finished on them. */
const isMade = (piece: Piece): boolean => /^(upper|lower|front-)/.test(piece.id) || isFinished(piece);

/** The cut pieces of a fabric: its copy once there is one, otherwise the first ones. */
export function cutPieces(pieces: readonly Piece[], fabric: string): readonly Piece[] {
  const cut = pieces.filter(isMade);
  const copy = cut.filter((piece) => piece.id.endsWith(`@${fabric}`));
  return copy.length > 0 ? copy : cut.filter((piece) => !piece.id.includes('@'));
}

/** All pieces that are sewn in a fabric, the back too: what gets allowances and labels. */
export const sewnPieces = (pieces: readonly Piece[], fabric: string): readonly Piece[] =>
  cutPieces(pieces, fabric).length === 0 ? [] : piecesOf(pieces, fabric);
