import { partAtDarts as part } from '../../pattern/part-at-darts.ts';
import { pieceWithDart, refused, withPieces } from '../pieces.ts';
import type { PartAtDarts } from '../types.ts';
import { kind } from './kind.ts';

/** Cuts a piece apart along two darts of one bust point: a princess line. */
export const partAtDarts = kind<PartAtDarts>({
  name: 'part-at-darts',
  keys: { darts: 'pair' },
  apply: (work, { darts }) => {
    const piece = pieceWithDart(work, darts[0]);
    if (piece === undefined) return refused('no-such-dart', { dart: darts[0] });
    const parted = part(piece, darts);
    return 'refused' in parted ? parted : { work: withPieces(work, piece.id, ...parted.ok) };
  },
});
