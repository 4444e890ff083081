import * as v from 'valibot';
import { setLabel } from '../../pattern/label.ts';
import { changed, pieceById, refused } from '../pieces.ts';
import { base, count, flag, id, name } from '../shapes.ts';
import type { Label } from '../types.ts';
import { kind } from './kind.ts';

/** Writes a piece's label. */
export const label = kind<Label>({
  name: 'label',
  schema: v.strictObject({ ...base('label'), piece: id, name, cut: count, rightSideUp: flag }),
  apply: (work, { piece: pieceId, name, cut, rightSideUp }) => {
    const piece = pieceById(work, pieceId);
    if (piece === undefined) return refused('no-such-piece', { piece: pieceId });
    return changed(work, pieceId, setLabel(piece, { name, cut, rightSideUp }));
  },
});
