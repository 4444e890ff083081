import * as v from 'valibot';
import { renotch as markAgain } from '../../pattern/renotch.ts';
import { seamOf } from '../../pattern/seam.ts';
import { changed, fabricOf, pieceById, refused } from '../pieces.ts';
import { base, id, mm } from '../shapes.ts';
import type { Renotch } from '../types.ts';
import { kind } from './kind.ts';

/** Marks a notch again on a trimmed style seam, from the partner in the same set or at a typed distance. */
export const renotch = kind<Renotch>({
  name: 'renotch',
  schema: v.strictObject({ ...base('renotch'), piece: id, notch: id, at: v.exactOptional(mm) }),
  apply: (work, { piece: pieceId, notch, at }) => {
    const piece = pieceById(work, pieceId);
    if (piece === undefined) return refused('no-such-piece', { piece: pieceId });
    const runs = seamOf(work.pieces, 'style-line', fabricOf(pieceId));
    const partner = runs?.a.pieces.includes(pieceId) ? runs.b : runs?.a;
    return changed(work, pieceId, markAgain(piece, notch, partner, at));
  },
});
