import { pieceById, refused } from '../pieces.ts';
import type { Overlay } from '../types.ts';
import { kind } from './kind.ts';
import { withWork } from '../pieces.ts';

/** Notes that a piece was closed and laid on the block. */
export const overlay = kind<Overlay>({
  name: 'overlay',
  keys: { piece: 'id' },
  apply: (work, { piece }) => {
    if (pieceById(work, piece) === undefined) return refused('no-such-piece', { piece });
    if (work.opened === undefined) return refused('not-opened');
    return work.overlaid.includes(piece)
      ? { work }
      : { work: withWork(work, { overlaid: [...work.overlaid, piece] }) };
  },
});
