import { chainEnd, chainStart } from '../../geometry/chain.ts';
import { cross } from '../../geometry/point.ts';
import { tangentAt } from '../../geometry/segment.ts';
import { isRedrawn, overlay } from '../../pattern/overlay.ts';
import { outlineAsCut, sliverArea } from '../../pattern/slivers.ts';
import type { Edge, Piece, Treatment } from '../../pattern/types.ts';
import type { Fabric, Work } from '../../recipe/types.ts';
import { at, names, near, tolerance } from '../finding.ts';
import { isBack, piecesFor } from '../table.ts';
import type { Check, CheckSpec, Finding } from '../types.ts';

/** Sine of the angle at which the seam as cut met the edge that was redrawn since. */
function sineAtEnd(cut: readonly Edge[], redrawn: Edge): number | undefined {
  const n = cut.length;
  for (let i = 0; i < n; i++) {
    const edge = cut[i]!;
    const next = cut[i + 1 < n ? i + 1 : 0]!;
    const isSeam = edge.role === 'style-line';
    if (!isSeam && next.role !== 'style-line') continue;
    const other = isSeam ? next : edge;
    if (other.role !== redrawn.role || other.side !== redrawn.side) continue;
    const into = tangentAt(edge.chain[edge.chain.length - 1]!, 1);
    return Math.abs(cross(into, tangentAt(next.chain[0]!, 0)));
  }
  return undefined;
}

/**
 * What the take-out has to take from the piece, mm²: the triangle between the edge as it was, as it was redrawn, and the excess
 * along the seam, a side, a side and the sine between them. Negative: paper goes.
 */
function predicted(cut: readonly Edge[], redrawn: Edge, excess: number): number | undefined {
  const sine = sineAtEnd(cut, redrawn);
  return sine === undefined ? undefined : (-(redrawn.origin.to - redrawn.origin.from) * excess * sine) / 2;
}

/** The treatment that is done: a bridge alone is only its beginning. */
function treatmentIn(piece: Piece): Treatment | undefined {
  for (const treatment of piece.treatments) if (treatment.kind !== 'bridged') return treatment;
  return undefined;
}

/** The end edge that a take-out drew anew. */
function redrawnEnd(piece: Piece): Edge | undefined {
  if (piece.seam === undefined) return undefined;
  for (const edge of piece.seam) if (edge.role !== 'style-line' && isRedrawn(edge)) return edge;
  return undefined;
}

function treated(piece: Piece, fabric: Fabric, work: Work, spec: CheckSpec, findings: Finding[]): void {
  const treatment = treatmentIn(piece);
  if (!treatment || !work.opened) return;
  let rest = 0;
  for (const fit of overlay(piece, work.opened, work.lines)) rest = Math.max(rest, fit.residual);
  const about = { fabric, piece: piece.id };
  findings.push(near('sliver/rest', 'mm', rest, 0, tolerance(spec, 'fit'), { about }));
  const end = redrawnEnd(piece);
  if (!end) return;
  const cut = outlineAsCut(piece);
  const area = sliverArea(end, cut);
  const expected = predicted(cut, end, treatment.excess);
  if (area === undefined || expected === undefined) return;
  const [top, bottom] = [chainStart(end.chain), chainEnd(end.chain)];
  const drawn = near('sliver/area', 'mm2', area, expected, tolerance(spec, 'area'), {
    where: at(top.y > bottom.y ? top : bottom),
    about: { fabric, piece: piece.id, edge: end.id },
  });
  // The amount itself is marked where it was taken out; here it only tells how the overlay looks.
  findings.push(drawn.state === 'right' ? drawn : { ...drawn, state: 'note' });
}

/**
 * Step 10, on every treated piece of `names.fabrics`: laid on the block again, all that no treatment redrew still lies there
 * (tolerance `fit`, mm), and a take-out's sliver has the predicted area (tolerance `area`, mm²; a note when it has not).
 */
export const sliver: Check = ({ after }, spec) => {
  const findings: Finding[] = [];
  for (const fabric of names(spec, 'fabrics') as readonly Fabric[]) {
    for (const piece of piecesFor(after, fabric)) {
      if (!isBack(piece)) treated(piece, fabric, after, spec, findings);
    }
  }
  return findings;
};
