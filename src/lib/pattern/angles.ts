import type { Part, Piece } from './types.ts';
import { samePoint, scale } from '../geometry/point.ts';
import { tangentAt } from '../geometry/segment.ts';
import { contains } from '../geometry/outline.ts';
import { PI, TAU, angleBetween } from '../geometry/trig.ts';
import { chainOf } from './outline.ts';

/**
 * Paper round a bust point, radians, over all sheets that carry it: a full turn while it lies inside the paper, less the dart's
 * angle once the working dart reaches it. No cut and no turn about it may change the sum.
 */
export function angleSum(pieces: readonly Piece[], bustPoint: string): number {
  let sum = 0;
  for (const piece of pieces) for (const part of piece.parts) sum += paperAngle(part, bustPoint);
  return sum;
}

function paperAngle(part: Part, id: string): number {
  const p = part.landmarks[id];
  if (p === undefined) return 0;
  const n = part.edges.length;
  let sum = 0;
  let corners = 0;
  for (let i = 0; i < n; i++) {
    const out = part.edges[i]!.chain[0]!;
    if (!samePoint(out.a, p)) continue;
    const chain = part.edges[(i + n - 1) % n]!.chain;
    const into = chain[chain.length - 1]!;
    // The paper lies on the right hand of the outline: clockwise from the way on to the way back.
    const angle = angleBetween(tangentAt(out, 0), scale(tangentAt(into, 1), -1));
    sum += angle > 0 ? angle : angle + TAU;
    corners++;
  }
  // Of several darts that share the point, each corner lacks its own dart only.
  if (corners > 0) return sum - TAU * (corners - 1);
  const where = contains(chainOf(part.edges), p);
  return where === 'inside' ? TAU : where === 'edge' ? PI : 0;
}
