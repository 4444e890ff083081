import { setGrain } from '../../pattern/grain.ts';
import { resolveAnchor } from '../anchors.ts';
import { onPiece, refused } from '../pieces.ts';
import type { DrawGrain } from '../types.ts';
import { kind } from './kind.ts';

/** Draws a piece's grainline. */
export const grain = kind<DrawGrain>({
  name: 'grain',
  keys: { piece: 'id', at: 'anchor', angle: 'angle' },
  apply: (work, { piece: id, at, angle }) =>
    onPiece(work, id, (piece) => {
      const point = resolveAnchor(work, at, id);
      return point === undefined ? refused('no-such-place') : setGrain(piece, point, angle);
    }),
});
