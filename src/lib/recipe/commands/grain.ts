import * as v from 'valibot';
import { setGrain } from '../../pattern/grain.ts';
import { resolveAnchor } from '../anchors.ts';
import { changed, pieceById, refused } from '../pieces.ts';
import { anchor, angle, base, id } from '../shapes.ts';
import type { DrawGrain } from '../types.ts';
import { kind } from './kind.ts';

/** Draws a piece's grainline. */
export const grain = kind<DrawGrain>({
  name: 'grain',
  schema: v.strictObject({ ...base('grain'), piece: id, at: anchor, angle }),
  apply: (work, { piece: pieceId, at, angle }) => {
    const piece = pieceById(work, pieceId);
    if (piece === undefined) return refused('no-such-piece', { piece: pieceId });
    const point = resolveAnchor(work, at, pieceId);
    return point === undefined
      ? refused('no-such-place')
      : changed(work, pieceId, setGrain(piece, point, angle));
  },
});
