import { done, refuse, type Outcome } from './outcome.ts';
import type { Piece, PieceLabel } from './types.ts';
import { openPiece } from './with.ts';

/** Write on a piece what it is, how often it is cut, whether its right side must be up and whether its centre lies on the fold. */
export function setLabel(piece: Piece, label: PieceLabel): Outcome<Piece> {
  if (!(Number.isInteger(label.cut) && label.cut > 0)) return refuse('bad-count', { cut: label.cut });
  const next = openPiece(piece);
  next.label = label;
  return done(next);
}
