import type { Piece } from './types.ts';
import { openPiece } from './with.ts';

/** The piece with other allowances. */
export function withAllowances(p: Piece, allowances: Piece['allowances']): Piece {
  const next = openPiece(p);
  next.allowances = allowances;
  return next;
}

/** The piece with other corners. */
export function withCorners(p: Piece, corners: Piece['corners']): Piece {
  const next = openPiece(p);
  next.corners = corners;
  return next;
}

/** The piece before any treatment of its seam. */
export function withoutSeam(p: Piece): Piece {
  const next = openPiece(p);
  next.seam = undefined;
  return next;
}
