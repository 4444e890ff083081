import type { Box } from '../geometry/types.ts';
import type { Piece } from '../pattern/types.ts';
import { pieceBox } from './boxes.ts';

/** How much further to a side both ends of a piece must lie than those of another to be beside it, in widths of the narrower one. */
const BESIDE = 1 / 4;

/** Fronts from the wearer's right to the left; those that lie one above the other stay as they come. */
export function fromTheRight(fronts: readonly Piece[]): readonly Piece[] {
  const ordered: Piece[] = [];
  for (const piece of fronts) {
    let at = ordered.length;
    while (at > 0 && isBefore(pieceBox(piece), pieceBox(ordered[at - 1]!))) at--;
    ordered.splice(at, 0, piece);
  }
  return ordered;
}

function isBefore(a: Box, b: Box): boolean {
  const enough = BESIDE * Math.min(a.maxX - a.minX, b.maxX - b.minX);
  return b.minX - a.minX > enough && b.maxX - a.maxX > enough;
}
