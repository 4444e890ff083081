import { compose, invert, rotationByAngle } from '../geometry/isometry.ts';
import type { Tracing } from '../machines/tool-spec.ts';
import type { Part } from '../pattern/types.ts';
import type { Work } from '../recipe/types.ts';
import { matrixOf } from './layout.ts';

/**
 * How far the parts that a turn moved have come, as SVG matrices by part id; undefined when nothing was turned, or when it divided
 * the paper first. Moving what is drawn already is much lighter than drawing it anew.
 */
export function turnedParts(before: Work, after: Work): Readonly<Record<string, string>> | undefined {
  if (after.turns.length <= before.turns.length) return undefined;
  const moves: Record<string, string> = {};
  for (const piece of after.pieces) {
    if (before.pieces.includes(piece)) continue;
    for (const part of piece.parts) {
      const stood = partOf(before, part);
      if (!stood) return undefined;
      if (stood === part) continue;
      const by = compose(part.motion, invert(stood.motion));
      const still = Math.abs(by.b) < 1e-12 && Math.abs(by.e) + Math.abs(by.f) < 1e-9;
      if (!still) moves[part.id] = matrixOf(by);
    }
  }
  return moves;
}

/** A block that is swung round a pin, whole: the same for all its parts. */
export function swungParts(
  { pieces }: Work,
  { piece, pin, angle }: Tracing,
): Readonly<Record<string, string>> {
  const matrix = matrixOf(rotationByAngle(pin, angle));
  const parts = pieces.find(({ id }) => id === piece)?.parts ?? [];
  return Object.fromEntries(parts.map(({ id }) => [id, matrix]));
}

/** A part as it was in a work: the last of that id, as copies have the same ones. */
function partOf({ pieces }: Work, { id }: Part): Part | undefined {
  let found: Part | undefined;
  for (const piece of pieces) found = piece.parts.find((part) => part.id === id) ?? found;
  return found;
}
