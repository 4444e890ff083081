import * as v from 'valibot';
import { easeIn } from '../../pattern/ease.ts';
import { changed, pieceById, refused } from '../pieces.ts';
import { base, id } from '../shapes.ts';
import type { EaseIn } from '../types.ts';
import { kind } from './kind.ts';

/** Marks the bridged excess as eased between two notches. */
export const ease = kind<EaseIn>({
  name: 'ease',
  schema: v.strictObject({ ...base('ease'), piece: id, dart: id, from: id, to: id }),
  apply: (work, { piece: pieceId, dart, from, to }) => {
    const piece = pieceById(work, pieceId);
    if (piece === undefined) return refused('no-such-piece', { piece: pieceId });
    return changed(work, pieceId, easeIn(piece, dart, from, to));
  },
});
