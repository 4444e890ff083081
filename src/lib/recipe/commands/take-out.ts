import * as v from 'valibot';
import { takeOut as trimmed } from '../../pattern/take-out.ts';
import { baseId, suffixOf } from '../../pattern/copy.ts';
import { changed, pieceById, refused } from '../pieces.ts';
import { base, end, id, mm } from '../shapes.ts';
import type { TakeOut } from '../types.ts';
import { kind } from './kind.ts';

/** Takes the excess out at an end of the seam; the partner in the same set says how much there is. */
export const takeOut = kind<TakeOut>({
  name: 'take-out',
  schema: v.strictObject({
    ...base('take-out'),
    piece: id,
    dart: id,
    end,
    amount: v.union([v.literal('measured'), mm]),
  }),
  apply: (work, { piece: pieceId, dart, end, amount }) => {
    const piece = pieceById(work, pieceId);
    if (piece === undefined) return refused('no-such-piece', { piece: pieceId });
    const partner = pieceById(work, (baseId(pieceId) === 'upper' ? 'lower' : 'upper') + suffixOf(pieceId));
    if (partner === undefined) return refused('no-partner', { piece: pieceId });
    return changed(work, pieceId, trimmed(piece, dart, end, amount, partner));
  },
});
