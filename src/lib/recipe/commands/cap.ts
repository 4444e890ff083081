import { capDart } from '../../pattern/cap.ts';
import { onDart } from '../pieces.ts';
import type { Cap } from '../types.ts';
import { kind } from './kind.ts';

/** Draws the folded cap of a dart for the way it is pressed. */
export const cap = kind<Cap>({
  name: 'cap',
  keys: { dart: 'id', fold: ['centre', 'side', 'up', 'down'] },
  apply: (work, { dart, fold }) => onDart(work, dart, (piece) => capDart(piece, dart, fold)),
});
