import { chainEnd, chainStart } from '../../geometry/chain.ts';
import { edgeLength } from '../../pattern/edge-length.ts';
import { outlineOf } from '../../pattern/outline.ts';
import type { Edge, Piece } from '../../pattern/types.ts';
import { at, between, dimension, missing, names, near, number, refusedBy, tolerance } from '../finding.ts';
import { pieceOf } from '../table.ts';
import type { Check, CheckSpec, Finding } from '../types.ts';

/** The edges of a piece's princess seam by interval. */
const seamOf = (piece: Piece): readonly Edge[] =>
  outlineOf(piece).filter((e) => e.role === 'style-line' && e.origin.edge.startsWith('princess'));

/** Interval by interval: what is sewn together is equally long, but for what the smoothing took. */
function walked(centre: Piece, side: Piece, spec: CheckSpec): Finding[] {
  return seamOf(centre).flatMap((edge): Finding[] => {
    const partner = seamOf(side).find((e) => e.id === edge.partner);
    const interval = edge.id.split('/')[1] ?? '';
    if (!partner) return [missing('princess/parted', { about: { interval } })];
    return [
      near('princess/seam', 'mm', edgeLength(partner) - edgeLength(edge), 0, tolerance(spec, 'seam'), {
        where: dimension(chainStart(edge.chain), chainEnd(edge.chain)),
        about: { interval },
      }),
    ];
  });
}

function smoothed(piece: Piece, bust: string, spec: CheckSpec): Finding[] {
  const about = { piece: piece.id };
  const found = piece.smoothed?.filter((s) => s.at === bust).at(-1);
  if (!found) return [missing('princess/smooth', { about })];
  const point = piece.parts.flatMap((part) => part.landmarks[bust] ?? [])[0];
  const more = { where: point && at(point), about };
  const findings = [
    between('princess/smooth', 'mm', found.moved, [0, number(spec, 'most')], tolerance(spec, 'moved'), more),
  ];
  const least = spec.numbers?.['least-reach'];
  if (least === undefined) return findings;
  const asked = [least, number(spec, 'most-reach')] as const;
  return [...findings, between('princess/reach', 'mm', found.reach, asked, tolerance(spec, 'reach'), more)];
}

/**
 * The front is parted by a seam through the bust point in `names.pieces` (centre, side), whose edges are equally long interval by interval;
 * where `names.smooth` lists pieces, the corner at `names.bust` is smoothed on them and moved by no more than `numbers.most` mm, over
 * `least-reach` to `most-reach` mm of seam on either side where that is asked for. Tolerances `seam`, `moved`, `reach` in mm.
 */
export const princess: Check = ({ after, unfollowed }, spec) => {
  const [centre, side] = names(spec, 'pieces').map((id) => pieceOf(after, id));
  if (!centre || !side) {
    const refusal = unfollowed.find(({ command }) => command.do === 'part-at-darts');
    return [refusal ? refusedBy('princess/parted', refusal.refused) : missing('princess/parted')];
  }
  const smooth = spec.names?.['smooth'] === undefined ? [] : names(spec, 'smooth');
  const bust = names(spec, 'bust')[0]!;
  return [
    ...walked(centre, side, spec),
    ...[centre, side].filter((p) => smooth.includes(p.id)).flatMap((piece) => smoothed(piece, bust, spec)),
  ];
};
