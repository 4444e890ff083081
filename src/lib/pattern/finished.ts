import type { Piece } from './types.ts';

/**
 * Whether something of the piece was made ready to sew: a dart drawn to its sewn point, an opening drawn over, a corner smoothed. Its
 * seam then no longer follows from its sheets, so these are not to be cut or turned any more.
 */
export const isFinished = ({ finished, fullness, smoothed }: Piece): boolean =>
  (finished !== undefined && finished.length > 0) ||
  (fullness !== undefined && fullness.length > 0) ||
  (smoothed !== undefined && smoothed.length > 0);
