import { smoothSeam as smooth } from '../../pattern/smooth-seam.ts';
import { onPiece } from '../pieces.ts';
import type { SmoothSeam } from '../types.ts';
import { kind } from './kind.ts';

/** Smooths the corner of a seam at a landmark, so far on either side of it. */
export const smoothSeam = kind<SmoothSeam>({
  name: 'smooth-seam',
  keys: { piece: 'id', at: 'id', reach: 'mm' },
  apply: (work, { piece: id, at, reach }) => onPiece(work, id, (piece) => smooth(piece, at, reach)),
});
