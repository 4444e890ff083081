import { carryNotches as carried } from '../../pattern/allowance.ts';
import { onPiece } from '../pieces.ts';
import type { CarryNotches } from '../types.ts';
import { kind } from './kind.ts';

/** Takes a piece's notches out to its cut line. */
export const carryNotches = kind<CarryNotches>({
  name: 'carry-notches',
  keys: { piece: 'id' },
  apply: (work, { piece: id }) => onPiece(work, id, carried),
});
