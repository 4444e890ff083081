import { groupOf, outlineOf } from './outline.ts';
import type { Piece } from './types.ts';

/**
 * The seam group of a piece's centre edge, which lies on the fold of the cloth or is sewn: `centre-back`, `centre-front`. undefined for a piece
 * that has none, such as one that runs across the centre.
 */
export function centreGroup(piece: Piece): string | undefined {
  for (const edge of outlineOf(piece))
    if (edge.role === 'centre-back' || edge.role === 'centre-front') return groupOf(edge);
  return undefined;
}

/** Whether the centre edge of a piece was given no allowance: it lies on the fold. */
export function onFold(piece: Piece): boolean {
  const centre = centreGroup(piece);
  return centre !== undefined && piece.allowances[centre] === 0;
}
