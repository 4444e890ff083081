import * as v from 'valibot';
import { setCorner } from '../../pattern/allowance.ts';
import { changed, pieceById, refused } from '../pieces.ts';
import { base, id } from '../shapes.ts';
import type { ShapeCorner } from '../types.ts';
import { kind } from './kind.ts';

/** Says how the allowance turns the corner between two seam groups. */
export const corner = kind<ShapeCorner>({
  name: 'corner',
  schema: v.strictObject({
    ...base('corner'),
    piece: id,
    before: id,
    after: id,
    form: v.picklist(['mitre', 'square', 'reflect', 'step']),
    first: v.exactOptional(id),
  }),
  apply: (work, { piece: pieceId, before, after, form, first }) => {
    const piece = pieceById(work, pieceId);
    if (piece === undefined) return refused('no-such-piece', { piece: pieceId });
    const rule = first === undefined ? { before, after, form } : { before, after, form, first };
    return changed(work, pieceId, setCorner(piece, rule));
  },
});
