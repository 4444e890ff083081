import { setCorner } from '../../pattern/allowance.ts';
import { changed, noSuchPiece, pieceById } from '../pieces.ts';
import type { ShapeCorner } from '../types.ts';
import { kind } from './kind.ts';

/** Says how the allowance turns the corner between two seam groups. */
export const corner = kind<ShapeCorner>({
  name: 'corner',
  keys: {
    piece: 'id',
    before: 'id',
    after: 'id',
    form: ['mitre', 'square', 'reflect', 'step'],
    first: 'id?',
  },
  apply: (work, { piece: id, before, after, form, first }) => {
    const piece = pieceById(work, id);
    return piece === undefined
      ? noSuchPiece(id)
      : changed(work, id, setCorner(piece, { before, after, form, first }));
  },
});
