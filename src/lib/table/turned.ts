import { compose, invert } from '../geometry/isometry.ts';
import type { Part } from '../pattern/types.ts';
import type { Work } from '../recipe/types.ts';
import { matrixOf } from './layout.ts';

/**
 * How far the parts that a turn moved have come, as SVG matrices by part id; undefined when nothing was turned. Moving what is
 * drawn already is much lighter than drawing it anew.
 */
export function turnedParts(before: Work, after: Work): Readonly<Record<string, string>> | undefined {
  if (after.turns.length <= before.turns.length) return undefined;
  const moves: Record<string, string> = {};
  for (const piece of after.pieces) {
    if (before.pieces.includes(piece)) continue;
    for (const part of piece.parts) {
      const stood = partOf(before, part);
      if (!stood || stood === part) continue;
      const by = compose(part.motion, invert(stood.motion));
      const still = Math.abs(by.b) < 1e-12 && Math.abs(by.e) + Math.abs(by.f) < 1e-9;
      if (!still) moves[part.id] = matrixOf(by);
    }
  }
  return moves;
}

/** A part as it was in a work: the last of that id, as copies have the same ones. */
function partOf({ pieces }: Work, { id }: Part): Part | undefined {
  let found: Part | undefined;
  for (const piece of pieces) found = piece.parts.find((part) => part.id === id) ?? found;
  return found;
}
