import type { Outcome } from '../pattern/outcome.ts';
import type { Notch, Piece } from '../pattern/types.ts';

/** How notches are marked again when their line is drawn anew. Set by what marks them: without it a line has none. */
export const lineNotches: {
  mark?: (front: Piece, line: string, notch: Notch) => Outcome<Piece>;
} = {};
