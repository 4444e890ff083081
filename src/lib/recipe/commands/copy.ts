import { copyPieces as copied } from '../../pattern/copy.ts';
import { fabricOf, refused } from '../pieces.ts';
import type { CopyPieces } from '../types.ts';
import { kind } from './kind.ts';
import { withWork } from '../pieces.ts';

/** Copies the learner's own set once for a fabric. */
export const copy = kind<CopyPieces>({
  name: 'copy',
  keys: { as: 'fabric' },
  apply: (work, { as }) => {
    if (work.pieces.some((p) => fabricOf(p.id) === as)) return refused('already-copied', { as });
    return { work: withWork(work, { pieces: [...work.pieces, ...copied(work.pieces, as)] }) };
  },
});
