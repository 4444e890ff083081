import { setAllowance } from '../../pattern/allowance.ts';
import { onPiece } from '../pieces.ts';
import type { Allow } from '../types.ts';
import { kind } from './kind.ts';

/** Gives a seam group its allowance, mm. */
export const allow = kind<Allow>({
  name: 'allow',
  keys: { piece: 'id', group: 'id', width: 'width' },
  apply: (work, { piece: id, group, width }) =>
    onPiece(work, id, (piece) => setAllowance(piece, group, width)),
});
