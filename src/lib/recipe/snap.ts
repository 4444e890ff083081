import { nearestOnChain } from '../geometry/nearest.ts';
import type { Point } from '../geometry/types.ts';
import { outlineOf } from '../pattern/outline.ts';
import { anchorInside, fractionAt, nearestLandmark } from './anchors.ts';
import { pieceById } from './pieces.ts';
import type { Anchor, Work } from './types.ts';

export type SnapKind = 'landmark' | 'edge' | 'line';

export interface Snapped {
  readonly anchor: Anchor;
  /** mm, where the pointer's point went. */
  readonly point: Point;
  readonly snapped: SnapKind | 'none';
  /** Id of the landmark, edge or line it went to. */
  readonly id?: string;
}

/**
 * Takes a point to what is near on a piece, at most `reach` mm away: to a landmark first, then to an inner line, then to
 * an outline edge, as far as `kinds` allows; else the point stays and is held inside the piece. Pointer and keyboard both go
 * through here. `pieceId`: the piece that is meant; by default the first on the table. Throws RangeError when it is not there.
 */
export function snap(
  work: Work,
  point: Point,
  reach: number,
  kinds: readonly SnapKind[],
  pieceId: string = work.pieces[0]!.id,
): Snapped {
  const piece = pieceById(work, pieceId);
  if (piece === undefined) throw new RangeError(`no piece ${pieceId} on the table`);
  if (kinds.includes('landmark')) {
    const near = nearestLandmark(piece, point, () => true);
    if (near !== undefined && near.distance <= reach)
      return { anchor: { landmark: near.id }, point: near.at, snapped: 'landmark', id: near.id };
  }
  const lines = piece.parts.flatMap((part) => part.lines);
  const targets = { line: lines, edge: outlineOf(piece) };
  for (const what of ['line', 'edge'] as const) {
    if (!kinds.includes(what)) continue;
    let best: Snapped | undefined;
    let least = reach;
    for (const { id, chain } of targets[what]) {
      const near = nearestOnChain(chain, point);
      if (near.distance > least || (best !== undefined && near.distance === least)) continue;
      least = near.distance;
      best = { anchor: { on: id, at: fractionAt(chain, point) }, point: near.point, snapped: what, id };
    }
    if (best !== undefined) return best;
  }
  return { anchor: anchorInside(work, pieceId, point), point, snapped: 'none' };
}
