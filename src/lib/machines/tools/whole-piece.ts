import { chainBounds } from '../../geometry/chain.ts';
import { contains, signedArea } from '../../geometry/outline.ts';
import type { Point } from '../../geometry/types.ts';
import type { Piece } from '../../pattern/types.ts';
import type { ToolTarget } from '../tool-spec.ts';

/** Where a piece as a whole is taken hold of, mm: on the paper of its largest part, as near the middle as that goes. */
export function centreOf(piece: Piece): Point {
  const chains = piece.parts.map((part) => part.edges.flatMap((edge) => edge.chain));
  const areas = chains.map((chain) => Math.abs(signedArea(chain)));
  const largest = chains[areas.indexOf(Math.max(...areas))] ?? [];
  const { minX, maxX, minY, maxY } = chainBounds(largest);
  const down = [0.5, 0.6, 0.4, 0.7, 0.3, 0.8, 0.2, 0.9, 0.1];
  const places = down.map((part) => ({ x: (minX + maxX) / 2, y: minY + (maxY - minY) * part }));
  return places.find((place) => contains(largest, place, 5) === 'inside') ?? places[0]!;
}

/** A target for a piece as a whole. */
export const wholePiece = (piece: Piece, how: ToolTarget['how'], done = false): ToolTarget => ({
  id: `piece:${piece.id}`,
  kind: 'piece',
  point: centreOf(piece),
  piece: piece.id,
  how,
  ref: piece.id,
  done,
});
/** Id of the piece that such a target stands for. */
export const pieceOf = (target: string): string => target.slice('piece:'.length);
