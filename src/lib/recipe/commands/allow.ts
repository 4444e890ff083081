import * as v from 'valibot';
import { setAllowance } from '../../pattern/allowance.ts';
import { changed, pieceById, refused } from '../pieces.ts';
import { base, id, width } from '../shapes.ts';
import type { Allow } from '../types.ts';
import { kind } from './kind.ts';

/** Gives a seam group its allowance, mm. */
export const allow = kind<Allow>({
  name: 'allow',
  schema: v.strictObject({ ...base('allow'), piece: id, group: id, width }),
  apply: (work, { piece: pieceId, group, width }) => {
    const piece = pieceById(work, pieceId);
    if (piece === undefined) return refused('no-such-piece', { piece: pieceId });
    return changed(work, pieceId, setAllowance(piece, group, width));
  },
});
