import * as v from 'valibot';
import { takeOut as trimmed } from '../../pattern/take-out.ts';
import { baseId, suffixOf } from '../../pattern/copy.ts';
import { onPiece, pieceById, refused } from '../pieces.ts';
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
  apply: (work, { piece: id, dart, end, amount }) =>
    onPiece(work, id, (piece) => {
      const partner = pieceById(work, (baseId(id) === 'upper' ? 'lower' : 'upper') + suffixOf(id));
      if (partner === undefined) return refused('no-partner', { piece: id });
      return trimmed(piece, dart, end, amount, partner);
    }),
});
