import { setLabel } from '../../pattern/label.ts';
import { onPiece } from '../pieces.ts';
import type { Label } from '../types.ts';
import { kind } from './kind.ts';

/** Writes a piece's label. */
export const label = kind<Label>({
  name: 'label',
  keys: { piece: 'id', name: 'name', cut: 'count', rightSideUp: 'flag', onFold: 'flag?' },
  apply: (work, { piece: id, name, cut, rightSideUp, onFold }) =>
    onPiece(work, id, (piece) =>
      setLabel(piece, { name, cut, rightSideUp, ...(onFold === undefined ? {} : { onFold }) }),
    ),
});
