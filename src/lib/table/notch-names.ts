import { pointAtLength, tangentAtLength } from '../geometry/chain.ts';
import { add, norm, scale, sub } from '../geometry/point.ts';
import type { Point } from '../geometry/types.ts';
import { findEdge } from '../pattern/outline.ts';
import type { Piece } from '../pattern/types.ts';
import { pieceBox } from './boxes.ts';
import type { Label } from './labels.ts';
import { middle } from './layout.ts';

/** With fewer px for each mm there is no room for names, as on a narrow screen before it is enlarged. */
const NEAR = 0.45;
/** How far a name stands from its notch, px: clear of the notch's handle. */
const OFF = 22;

/** The names of a piece's notches, each inside of its edge, where no allowance is; `toScreen` takes mm of the piece to px. */
export function notchNames(piece: Piece, toScreen: (p: Point) => Point): readonly Label[] {
  const centre = middle(pieceBox(piece));
  return piece.notches.flatMap((notch): Label[] => {
    const chain = notch.ghost ? undefined : findEdge(piece, notch.edge)?.chain;
    if (!chain) return [];
    const p = pointAtLength(chain, notch.at);
    const t = tangentAtLength(chain, notch.at);
    const to = sub(centre, p);
    const side = t.x * to.y > t.y * to.x ? 1 : -1;
    const at = toScreen(p);
    const inwards = sub(toScreen({ x: p.x - t.y * side, y: p.y + t.x * side }), at);
    if (norm(inwards) < NEAR) return [];
    const spot = add(at, scale(inwards, OFF / norm(inwards)));
    return [{ id: `k ${piece.id} ${notch.id}`, text: notch.id, at: spot, tone: 'soft', sits: 'on' }];
  });
}
