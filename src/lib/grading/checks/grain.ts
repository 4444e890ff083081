import { contains } from '../../geometry/inside.ts';
import { cross, dot, lerp, sub } from '../../geometry/point.ts';
import { PI, atan2 } from '../../geometry/trig.ts';
import type { Point } from '../../geometry/types.ts';
import { baseId } from '../../pattern/copy.ts';
import { grainDirection } from '../../pattern/grain.ts';
import { chainOf, outlineOf } from '../../pattern/outline.ts';
import type { Grainline, Piece } from '../../pattern/types.ts';
import { dimension, fact, missing, names, near, note, tolerance } from '../finding.ts';
import { piecesFor } from '../table.ts';
import type { Cause, Check, CheckSpec, Finding, Tolerance } from '../types.ts';

/** An angle between undirected lines, in (−π/2, π/2]. */
const folded = (angle: number): number =>
  angle > PI / 2 ? angle - PI : angle <= -PI / 2 ? angle + PI : angle;

/** How far off, when the grainline runs as the centre front would run on a part that was turned. */
function copied(piece: Piece, along: Point, off: number, allowed: Tolerance): Cause | undefined {
  const turned = piece.parts
    .filter((part) => part.grain === 'void')
    .map(({ motion }) => ({ x: motion.c, y: motion.d }))
    .map((old) => folded(atan2(cross(along, old), dot(along, old))))
    .find((angle) => Math.abs(folded(off - angle)) <= allowed.value);
  return turned === undefined ? undefined : { code: 'copied-from-turned-part', amount: turned, unit: 'rad' };
}

/** With no part left that kept its grain the piece has no grain to keep: any one line will do, and that is said. */
function hasGrain(piece: Piece): boolean {
  for (const part of piece.parts) if (part.grain === 'kept') return true;
  return false;
}

/** By its grainline a piece is laid on the cloth, so the line lies on the piece (common practice): its middle does, a narrow piece may be shorter than it. */
function beside(piece: Piece, { from, to }: Grainline): boolean {
  return contains(chainOf(outlineOf(piece)), lerp(from, to, 0.5)) === 'outside';
}

function grainOf(piece: Piece, spec: CheckSpec): Finding {
  const about = { piece: piece.id };
  if (!piece.grainline) return missing('grain/drawn', { about });
  const { from, to } = piece.grainline;
  if (beside(piece, piece.grainline))
    return fact('grain/on-piece', false, { where: dimension(from, to), about });
  if (!hasGrain(piece)) return note('grain/void', { about });
  const along = grainDirection(piece);
  const way = sub(to, from);
  const off = folded(atan2(cross(along, way), dot(along, way)));
  const allowed = tolerance(spec, 'angle');
  const cause = () => copied(piece, along, off, allowed);
  return near('grain/direction', 'rad', off, 0, allowed, { where: dimension(from, to), cause, about });
}

/**
 * Step 12: each piece of `names.pieces` has one grainline on it, along the centre front of the part that kept its grain. Tolerance
 * `angle` in radians; positive is clockwise on the screen.
 */
export const grain: Check = ({ after, fabric }, spec) => {
  const wanted = names(spec, 'pieces');
  const findings: Finding[] = [];
  for (const piece of piecesFor(after, fabric)) {
    if (wanted.includes(baseId(piece.id))) findings.push(grainOf(piece, spec));
  }
  return findings;
};
