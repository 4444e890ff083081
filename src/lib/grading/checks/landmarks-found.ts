import { footOnChain } from '../../geometry/nearest.ts';
import { distance } from '../../geometry/point.ts';
import type { Point } from '../../geometry/types.ts';
import { findEdge, landmark } from '../../pattern/outline.ts';
import type { Piece } from '../../pattern/types.ts';
import { behind, dimension, missing, names, near, tolerance } from '../finding.ts';
import { pieceOf } from '../table.ts';
import type { Cause, Check } from '../types.ts';

/** Edges of the half block that a name may stand for; any other name is a landmark. */
const EDGES = ['centre-front', 'dart-upper', 'dart-lower'];
const OTHER_LEG: Readonly<Record<string, string>> = {
  'dart-upper': 'dart-lower',
  'dart-lower': 'dart-upper',
};

const codeOf = behind('landmarks-found/');
const onRight = behind('right/');

/** The point of the block nearest to `p` that carries the name, or undefined where the block has no such thing. */
function truth(front: Piece, what: string, p: Point): Point | undefined {
  if (!EDGES.includes(what)) return landmark(front, onRight(what));
  const edge = findEdge(front, what) ?? findEdge(front, onRight(what));
  return edge && footOnChain(edge.chain, p).point;
}

function causeOf(front: Piece, what: string, p: Point, reach: number): Cause | undefined {
  const other = OTHER_LEG[what];
  if (other !== undefined) {
    const there = truth(front, other, p);
    return there && distance(there, p) <= reach ? { code: 'other-leg' } : undefined;
  }
  const sewn = landmark(front, 'right/sewn-point');
  return what === 'bust-point' && sewn && distance(sewn, p) <= reach ? { code: 'sewn-point' } : undefined;
}

/** Step 1: what was pointed at on the half block, against the block's own landmarks and edges. `names.what`, tolerance `point` in mm. */
export const landmarksFound: Check = ({ before, after }, spec) => {
  const front = pieceOf(before, 'front');
  const allowed = tolerance(spec, 'point');
  return names(spec, 'what').map((what) => {
    const about = { what };
    const shown = after.identified[what];
    const there = shown && front && truth(front, what, shown);
    if (!front || !shown || !there) return missing(codeOf(what), { about });
    const cause = () => causeOf(front, what, shown, allowed.value);
    const extra = { about, cause, where: dimension(shown, there) };
    return near(codeOf(what), 'mm', distance(shown, there), 0, allowed, extra);
  });
};
