import { withEntry } from '../../pattern/with-entry.ts';
import { pieceById, refused } from '../pieces.ts';
import type { PlacePiece } from '../types.ts';
import { kind } from './kind.ts';
import { withWork } from '../pieces.ts';

/** Says where a piece lies on the table; the piece's own numbers stay. */
export const place = kind<PlacePiece>({
  name: 'place',
  keys: { piece: 'id', dx: 'mm', dy: 'mm', angle: 'angle' },
  apply: (work, { piece, dx, dy, angle }) => {
    if (pieceById(work, piece) === undefined) return refused('no-such-piece', { piece });
    return { work: withWork(work, { placed: withEntry(work.placed, piece, { dx, dy, angle }) }) };
  },
});
