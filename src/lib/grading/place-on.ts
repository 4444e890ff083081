import { chainEnd, chainLength, chainStart } from '../geometry/chain.ts';
import { nearestOnChain } from '../geometry/nearest.ts';
import { distance } from '../geometry/point.ts';
import type { Point } from '../geometry/types.ts';
import { findEdge, landmark } from '../pattern/outline.ts';
import type { Piece } from '../pattern/types.ts';

/** How far along a block edge a point lies from the end at which a landmark stands, and the edge's length; mm. */
export function placeOn(
  paper: Piece,
  edge: string,
  from: string,
  p: Point,
): readonly [number, number] | undefined {
  const chain = findEdge(paper, edge)?.chain;
  const start = landmark(paper, from);
  if (chain === undefined || start === undefined) return undefined;
  const length = chainLength(chain);
  const along = nearestOnChain(chain, p).length;
  const forward = distance(start, chainStart(chain)) <= distance(start, chainEnd(chain));
  return [forward ? along : length - along, length];
}
