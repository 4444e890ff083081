import * as v from 'valibot';
import { setLabel } from '../../pattern/label.ts';
import { onPiece } from '../pieces.ts';
import { base, count, flag, id, name } from '../shapes.ts';
import type { Label } from '../types.ts';
import { kind } from './kind.ts';

/** Writes a piece's label. */
export const label = kind<Label>({
  name: 'label',
  schema: v.strictObject({ ...base('label'), piece: id, name, cut: count, rightSideUp: flag }),
  apply: (work, { piece: id, name, cut, rightSideUp }) =>
    onPiece(work, id, (piece) => setLabel(piece, { name, cut, rightSideUp })),
});
