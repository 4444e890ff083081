import { chainEnd, chainStart } from '../../geometry/chain.ts';
import { samePoint } from '../../geometry/point.ts';
import type { Point } from '../../geometry/types.ts';
import type { Dart, Edge, Part, Piece } from '../../pattern/types.ts';

/** A leg of a dart on the part that carries it. */
export function legOf(piece: Piece, id: string): { part: Part; edge: Edge } | undefined {
  for (const part of piece.parts) {
    const edge = part.edges.find((one) => one.id === id);
    if (edge) return { part, edge };
  }
  return undefined;
}

/** Where the two legs meet, mm; undefined when they do not (any more). */
export function tipOf(piece: Piece, dart: Dart): Point | undefined {
  const upper = legOf(piece, dart.upper)?.edge.chain;
  const lower = legOf(piece, dart.lower)?.edge.chain;
  if (!upper || !lower) return undefined;
  const ends = [chainStart(lower), chainEnd(lower)];
  return [chainStart(upper), chainEnd(upper)].find((p) => ends.some((q) => samePoint(p, q)));
}
