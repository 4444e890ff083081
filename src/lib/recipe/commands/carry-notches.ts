import * as v from 'valibot';
import { carryNotches as carried } from '../../pattern/allowance.ts';
import { changed, pieceById, refused } from '../pieces.ts';
import { base, id } from '../shapes.ts';
import type { CarryNotches } from '../types.ts';
import { kind } from './kind.ts';

/** Takes a piece's notches out to its cut line. */
export const carryNotches = kind<CarryNotches>({
  name: 'carry-notches',
  schema: v.strictObject({ ...base('carry-notches'), piece: id }),
  apply: (work, { piece: pieceId }) => {
    const piece = pieceById(work, pieceId);
    if (piece === undefined) return refused('no-such-piece', { piece: pieceId });
    return changed(work, pieceId, carried(piece));
  },
});
