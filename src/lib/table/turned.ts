import { compose, invert } from '../geometry/isometry.ts';
import type { Work } from '../recipe/types.ts';
import { matrixOf } from './layout.ts';

/**
 * How far the parts that a turn moved have come, as SVG matrices by part id; undefined when nothing was turned. Moving what is
 * drawn already is much lighter than drawing it anew.
 */
export function turnedParts(before: Work, after: Work): Readonly<Record<string, string>> | undefined {
  if (after.turns.length <= before.turns.length) return undefined;
  const stood = new Map(before.pieces.flatMap((piece) => piece.parts.map((part) => [part.id, part.motion])));
  const moves = after.pieces.flatMap((piece) =>
    piece.parts.flatMap(({ id, motion }) => {
      const from = stood.get(id);
      const by = from && compose(motion, invert(from));
      const still = !by || (Math.abs(by.b) < 1e-12 && Math.abs(by.e) + Math.abs(by.f) < 1e-9);
      return still ? [] : [[id, matrixOf(by)] as const];
    }),
  );
  return Object.fromEntries(moves);
}
