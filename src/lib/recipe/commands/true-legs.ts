import { trueLegs as trued } from '../../pattern/true-legs.ts';
import { onDart } from '../pieces.ts';
import type { TrueLegs } from '../types.ts';
import { kind } from './kind.ts';

/** Makes the two legs of a dart alike before it is capped. */
export const trueLegs = kind<TrueLegs>({
  name: 'true-legs',
  keys: { dart: 'id' },
  apply: (work, { dart }) => onDart(work, dart, (piece) => trued(piece, dart)),
});
