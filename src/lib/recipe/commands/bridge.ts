import { bridge as bridged } from '../../pattern/bridge.ts';
import { onPiece } from '../pieces.ts';
import type { Bridge } from '../types.ts';
import { kind } from './kind.ts';

/** Bridges the opening of a dart's connector and blends. */
export const bridge = kind<Bridge>({
  name: 'bridge',
  keys: { piece: 'id', dart: 'id', before: 'mm', after: 'mm' },
  apply: (work, { piece: id, dart, before, after }) =>
    onPiece(work, id, (piece) => bridged(piece, dart, before, after)),
});
