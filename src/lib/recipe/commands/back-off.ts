import { backOff as back } from '../../pattern/back-off.ts';
import { onDart } from '../pieces.ts';
import type { BackOff } from '../types.ts';
import { kind } from './kind.ts';

/** Draws a dart to its sewn point, so far from its tip. */
export const backOff = kind<BackOff>({
  name: 'back-off',
  keys: { dart: 'id', by: 'mm' },
  apply: (work, { dart, by }) => onDart(work, dart, (piece) => back(piece, dart, by)),
});
