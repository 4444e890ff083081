import { easeIn } from '../../pattern/ease.ts';
import { onPiece } from '../pieces.ts';
import type { EaseIn } from '../types.ts';
import { kind } from './kind.ts';

/** Marks the bridged excess as eased between two notches. */
export const ease = kind<EaseIn>({
  name: 'ease',
  keys: { piece: 'id', dart: 'id', from: 'id', to: 'id' },
  apply: (work, { piece: id, dart, from, to }) => onPiece(work, id, (piece) => easeIn(piece, dart, from, to)),
});
