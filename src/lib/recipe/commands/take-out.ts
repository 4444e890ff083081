import { takeOut as trimmed } from '../../pattern/take-out.ts';
import { baseId, suffixOf } from '../../pattern/copy.ts';
import { onPiece, pieceById, refused } from '../pieces.ts';
import type { TakeOut } from '../types.ts';
import { kind } from './kind.ts';

/** Takes the excess out at an end of the seam; the partner in the same set says how much there is. */
export const takeOut = kind<TakeOut>({
  name: 'take-out',
  keys: { piece: 'id', dart: 'id', end: 'end', amount: 'amount' },
  apply: (work, { piece: id, dart, end, amount }) =>
    onPiece(work, id, (piece) => {
      const partner = pieceById(work, (baseId(id) === 'upper' ? 'lower' : 'upper') + suffixOf(id));
      if (partner === undefined) return refused('no-partner', { piece: id });
      return trimmed(piece, dart, end, amount, partner);
    }),
});
