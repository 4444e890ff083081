import { renotch as markAgain } from '../../pattern/renotch.ts';
import { seamOf } from '../../pattern/seam.ts';
import { fabricOf, onPiece } from '../pieces.ts';
import type { Renotch } from '../types.ts';
import { kind } from './kind.ts';

/** Marks a notch again on a trimmed style seam, from the partner in the same set or at a typed distance. */
export const renotch = kind<Renotch>({
  name: 'renotch',
  keys: { piece: 'id', notch: 'id', at: 'mm?' },
  apply: (work, { piece: id, notch, at }) =>
    onPiece(work, id, (piece) => {
      const runs = seamOf(work.pieces, 'style-line', fabricOf(id));
      return markAgain(piece, notch, runs?.a.pieces.includes(id) ? runs.b : runs?.a, at);
    }),
});
