import type { Piece } from './types.ts';
import { openPiece } from './with.ts';

/** The id without the set it belongs to: `lower@woven` -> `lower`. */
export function baseId(id: string): string {
  const at = id.indexOf('@');
  return at < 0 ? id : id.slice(0, at);
}

/** The suffix of a set: `@woven`, or nothing for the pieces that were cut first. */
export const suffixOf = (id: string): string => id.slice(baseId(id).length);

/** Copies of the first set, to be treated for another fabric: ids gain `@<as>`, edges keep their names. Only the copies come back. */
export const copyPieces = (pieces: readonly Piece[], as: string): Piece[] =>
  pieces
    .filter((p) => suffixOf(p.id) === '')
    .map((p) => {
      const copy = openPiece(p);
      copy.id = `${p.id}@${as}`;
      return copy;
    });

/** The pieces that are sewn together: the copies made for `as` when there are any, else those that were cut first. */
export function piecesOf(pieces: readonly Piece[], as?: string): readonly Piece[] {
  const found: Piece[] = [];
  if (as !== undefined) {
    const ending = `@${as}`;
    for (const p of pieces) if (p.id.endsWith(ending)) found.push(p);
  }
  if (found.length === 0) for (const p of pieces) if (!p.id.includes('@')) found.push(p);
  return found;
}
