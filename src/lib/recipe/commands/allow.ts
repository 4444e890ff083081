import { setAllowance } from '../../pattern/allowance.ts';
import { changed, noSuchPiece, pieceById } from '../pieces.ts';
import type { Allow } from '../types.ts';
import { kind } from './kind.ts';

/** Gives a seam group its allowance, mm. */
export const allow = kind<Allow>({
  name: 'allow',
  keys: { piece: 'id', group: 'id', width: 'width' },
  apply: (work, { piece: id, group, width }) => {
    const piece = pieceById(work, id);
    return piece === undefined ? noSuchPiece(id) : changed(work, id, setAllowance(piece, group, width));
  },
});
