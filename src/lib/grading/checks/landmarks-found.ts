import { chainLength, pointAtLength } from '../../geometry/chain.ts';
import { footOnChain, nearestOnChain } from '../../geometry/nearest.ts';
import { distance } from '../../geometry/point.ts';
import type { Chain, Point } from '../../geometry/types.ts';
import { findEdge, landmark, outlineOf } from '../../pattern/outline.ts';
import type { Piece } from '../../pattern/types.ts';
import { behind, dimension, missing, names, near, tolerance } from '../finding.ts';
import { pieceOf } from '../table.ts';
import type { Cause, Check } from '../types.ts';

/** Edges of the half block that a name may stand for, all of them with that part in the outline: a dart may begin on one and make it two. */
const EDGES = ['centre-front', 'neckline', 'shoulder', 'armhole', 'side', 'waist'];
/** Legs have names of their own; any other name is a landmark. */
const OTHER_LEG: Readonly<Record<string, string>> = {
  'dart-upper': 'dart-lower',
  'dart-lower': 'dart-upper',
  'waist-dart-centre': 'waist-dart-side',
  'waist-dart-side': 'waist-dart-centre',
};

const codeOf = behind('landmarks-found/');
const onRight = behind('right/');

/** The point of an edge nearest to `p`, at least `clear` mm from its ends where the edge has room for that. */
function onEdge(chain: Chain, p: Point, clear: number): Point {
  const length = chainLength(chain);
  if (clear === 0 || length <= 2 * clear) return footOnChain(chain, p).point;
  const at = nearestOnChain(chain, p).length;
  return pointAtLength(chain, Math.min(Math.max(at, clear), length - clear));
}

/** The point of the block nearest to `p` that carries the name, or undefined where the block has no such thing. `clear`: of the ends of edges, mm. */
function truth(front: Piece, what: string, p: Point, clear = 0): Point | undefined {
  if (OTHER_LEG[what] !== undefined) {
    const leg = findEdge(front, onRight(what));
    return leg && onEdge(leg.chain, p, clear);
  }
  if (!EDGES.includes(what)) return landmark(front, what) ?? landmark(front, onRight(what));
  const feet = outlineOf(front)
    .filter(({ role }) => role === what)
    .map(({ chain }) => onEdge(chain, p, clear));
  return feet.sort((a, b) => distance(a, p) - distance(b, p))[0];
}

const SEWN = ['sewn-point', 'waist-sewn-point'];
const BUST = 'bust-point';

function causeOf(front: Piece, what: string, p: Point, reach: number): Cause | undefined {
  const own = truth(front, what, p);
  // It was right but for the end, which another edge has as well.
  if (own && distance(own, p) <= reach) return { code: 'at-an-end' };
  const other = OTHER_LEG[what];
  if (other !== undefined) {
    const there = truth(front, other, p);
    return there && distance(there, p) <= reach ? { code: 'other-leg' } : undefined;
  }
  const at = (id: string): boolean => {
    const there = landmark(front, onRight(id));
    return there !== undefined && distance(there, p) <= reach;
  };
  if (what === BUST && SEWN.some(at)) return { code: 'sewn-point' };
  return SEWN.includes(what) && at(BUST) ? { code: 'at-bust-point' } : undefined;
}

/**
 * Step 1: what was pointed at on the half block, against the block's own landmarks and edges. `names.what`, tolerance `point` in mm;
 * `numbers.clear`, mm: an edge is to be pointed at so far from its ends, which other edges have as well; left out: anywhere on it.
 */
export const landmarksFound: Check = ({ before, after }, spec) => {
  const front = pieceOf(before, 'front');
  const allowed = tolerance(spec, 'point');
  return names(spec, 'what').map((what) => {
    const about = { what };
    const shown = after.identified[what];
    const there = shown && front && truth(front, what, shown, spec.numbers?.['clear']);
    if (!front || !shown || !there) return missing(codeOf(what), { about });
    const cause = () => causeOf(front, what, shown, allowed.value);
    const extra = { about, cause, where: dimension(shown, there) };
    return near(codeOf(what), 'mm', distance(shown, there), 0, allowed, extra);
  });
};
