import { slash as cutTo } from '../../pattern/slash.ts';
import { changed, pieceWithDart, refused } from '../pieces.ts';
import type { Slash } from '../types.ts';
import { kind } from './kind.ts';

/** Cuts along the line and up the connector; after separating, only up the connector. */
export const slash = kind<Slash>({
  name: 'slash',
  keys: { dart: 'id', line: 'id', from: 'end?', past: 'mm' },
  apply: (work, { dart, line, from, past }) => {
    const piece = pieceWithDart(work, dart);
    if (piece === undefined) return refused('no-such-dart', { dart });
    return changed(work, piece.id, cutTo(piece, { dart, line, from, past }));
  },
});
