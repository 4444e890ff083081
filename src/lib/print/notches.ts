import { pointAtLength, tangentAtLength } from '../geometry/chain.ts';
import { samePoint } from '../geometry/point.ts';
import type { Chain, Point } from '../geometry/types.ts';
import { line } from '../geometry/segment.ts';
import type { CutLine } from '../pattern/allowance.ts';
import { outlineOf } from '../pattern/outline.ts';
import { baseId } from '../pattern/copy.ts';
import type { Piece } from '../pattern/types.ts';

/** Half the length of a mark on the seam line, and the distance between the two strokes of a double notch; mm full size. */
const MARK = 5;
const DOUBLE = 4;

/** Both strokes of a double notch, or the one of a single notch. */
function strokes(from: Point, to: Point, double: boolean): Chain[] {
  if (!double) return [[line(from, to)]];
  const length = Math.sqrt((to.x - from.x) * (to.x - from.x) + (to.y - from.y) * (to.y - from.y));
  if (length === 0) return [];
  return [-1, 1].map((side) => {
    const dx = (-(to.y - from.y) / length) * side * (DOUBLE / 2);
    const dy = ((to.x - from.x) / length) * side * (DOUBLE / 2);
    return [line({ x: from.x + dx, y: from.y + dy }, { x: to.x + dx, y: to.y + dy })];
  });
}

/**
 * The notches of a piece as strokes, mm full size: from the seam line to the cut line once they were carried out, across the
 * seam line before. Single on the front, double on the back. Old places of notches that were marked again are left out.
 */
export function notchStrokes(piece: Piece, cut: CutLine | undefined): Chain[] {
  const double = baseId(piece.id) === 'back';
  // On an edge without allowance there is nothing to carry a notch out to: it stays a mark across the seam line.
  const carriedOut = (piece.notchesCarried ? (cut?.notches ?? []) : []).filter(
    ({ from, to }) => !samePoint(from, to),
  );
  const carried = new Set(carriedOut.map((notch) => notch.id));
  const onCut = carriedOut.flatMap(({ from, to }) => strokes(from, to, double));
  const onSeam = piece.notches.flatMap((notch) => {
    const edge = outlineOf(piece).find(({ id }) => id === notch.edge);
    if (!edge || notch.ghost || carried.has(notch.id)) return [];
    const p = pointAtLength(edge.chain, notch.at);
    const t = tangentAtLength(edge.chain, notch.at);
    const [dx, dy] = [-t.y * MARK, t.x * MARK];
    return strokes({ x: p.x - dx, y: p.y - dy }, { x: p.x + dx, y: p.y + dy }, double);
  });
  return [...onCut, ...onSeam];
}
