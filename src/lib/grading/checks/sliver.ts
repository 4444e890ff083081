import { chainEnd, chainLength, chainStart, tangentAtLength } from '../../geometry/chain.ts';
import { cross } from '../../geometry/point.ts';
import { outlineOf } from '../../pattern/outline.ts';
import { isRedrawn, overlay } from '../../pattern/overlay.ts';
import { sliverArea } from '../../pattern/slivers.ts';
import type { Edge, Piece } from '../../pattern/types.ts';
import { withoutSeam } from '../../pattern/with.ts';
import type { Fabric, Work } from '../../recipe/types.ts';
import { at, names, near, tolerance } from '../finding.ts';
import { isBack, piecesFor } from '../table.ts';
import type { Check, CheckSpec, Finding } from '../types.ts';

/** Sine of the angle at which the seam as cut met the edge that was redrawn since. */
function sineAtEnd(cut: readonly Edge[], redrawn: Edge): number | undefined {
  for (let i = 0; i < cut.length; i++) {
    const edge = cut[i]!;
    const next = cut[(i + 1) % cut.length]!;
    const [seam, other] = edge.role === 'style-line' ? [edge, next] : [next, edge];
    if (seam.role !== 'style-line' || other.role !== redrawn.role || other.side !== redrawn.side) continue;
    const into = tangentAtLength(edge.chain, chainLength(edge.chain));
    return Math.abs(cross(into, tangentAtLength(next.chain, 0)));
  }
  return undefined;
}

/**
 * What the take-out has to take from the piece, mm²: the triangle between the edge as it was, as it was redrawn, and the excess
 * along the seam, a side, a side and the sine between them. Negative: paper goes.
 */
function predicted(piece: Piece, redrawn: Edge, excess: number): number | undefined {
  const sine = sineAtEnd(outlineOf(withoutSeam(piece)), redrawn);
  return sine === undefined ? undefined : (-(redrawn.origin.to - redrawn.origin.from) * excess * sine) / 2;
}

function treated(piece: Piece, fabric: Fabric, work: Work, spec: CheckSpec): Finding[] {
  const treatment = piece.treatments.find((one) => one.kind !== 'bridged');
  if (!treatment || !work.opened) return [];
  const about = { fabric, piece: piece.id };
  const fits = overlay(piece, work.opened, work.lines);
  const rest = fits.reduce((worst, fit) => Math.max(worst, fit.residual), 0);
  const findings = [near('sliver/rest', 'mm', rest, 0, tolerance(spec, 'fit'), { about })];
  const end = piece.seam?.find((edge) => edge.role !== 'style-line' && isRedrawn(edge));
  const area = end && sliverArea(piece, end.id);
  const expected = end && predicted(piece, end, treatment.excess);
  if (!end || area === undefined || expected === undefined) return findings;
  const where = at(
    chainStart(end.chain).y > chainEnd(end.chain).y ? chainStart(end.chain) : chainEnd(end.chain),
  );
  const drawn = near('sliver/area', 'mm2', area, expected, tolerance(spec, 'area'), {
    where,
    about: { ...about, edge: end.id },
  });
  // The amount itself is marked where it was taken out; here it only tells how the overlay looks.
  return [...findings, drawn.state === 'right' ? drawn : { ...drawn, state: 'note' }];
}

/**
 * Step 10, on every treated piece of `names.fabrics`: laid on the block again, all that no treatment redrew still lies there
 * (tolerance `fit`, mm), and a take-out's sliver has the predicted area (tolerance `area`, mm²; a note when it has not).
 */
export const sliver: Check = ({ after }, spec) =>
  (names(spec, 'fabrics') as readonly Fabric[]).flatMap((fabric) =>
    piecesFor(after, fabric)
      .filter((piece) => !isBack(piece))
      .flatMap((piece) => treated(piece, fabric, after, spec)),
  );
