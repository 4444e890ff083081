import { chainEnd, chainStart } from '../../geometry/chain.ts';
import { footOnChain } from '../../geometry/nearest.ts';
import type { Point } from '../../geometry/types.ts';
import { findEdge } from '../../pattern/outline.ts';
import type { Piece } from '../../pattern/types.ts';
import { at, dimension, fact, missing, names, near, refusedBy, tolerance } from '../finding.ts';
import { placeOn } from '../place-on.ts';
import { pieceOf, styleLine } from '../table.ts';
import type { Check, CheckSpec, Finding } from '../types.ts';

const ENDS = ['start', 'end'] as const;

/** How far along its edge an end lies from the landmark `names.from`, where the step says at which fraction of it. */
function placed(paper: Piece, edge: string, i: number, point: Point, spec: CheckSpec): Finding[] {
  const end = ENDS[i]!;
  const wanted = spec.numbers?.[`${end}-at`];
  if (wanted === undefined) return [];
  const from = names(spec, 'from')[i]!;
  const place = placeOn(paper, edge, from, point);
  if (!place) return [];
  const [along, length] = place;
  const more = { where: at(point), about: { edge, landmark: from } };
  return [near(`line-ends/${end}-place`, 'mm', along, wanted * length, tolerance(spec, 'place'), more)];
}

/**
 * Step 3: each end of the style line lies on the edge it should: `names.line`, `names.start`, `names.end` (edge ids, any of them), and so
 * far along it from the landmarks `names.from` as the fractions `numbers.start-at` and `end-at` say, where they are given. Tolerances in mm:
 * `end` for the gap of an end that stops short or runs over, `place` along the edge.
 */
export const lineEnds: Check = ({ after, unfollowed }, spec) => {
  const starts = names(spec, 'start');
  const drawn = styleLine(after, names(spec, 'line')[0]!, starts);
  const front = pieceOf(after, 'front');
  if (!drawn || !front) {
    const refusal = unfollowed.find(
      ({ command }) => command.do === 'draw-line' || command.do === 'draw-curve',
    );
    // A line that was drawn and could not lie on the paper is wrong; one that was never drawn is only missing.
    if (!refusal) return [missing('line-ends/drawn')];
    return [refusedBy('line-ends/drawn', refusal.refused)];
  }
  const wanted = [starts, names(spec, 'end')] as const;
  return drawn.ends.flatMap((on, i): Finding[] => {
    const edges = wanted[i]!;
    const code = `line-ends/${ENDS[i]!}`;
    const point = i === 0 ? chainStart(drawn.chain) : chainEnd(drawn.chain);
    if (on !== undefined) {
      const cause = on.endsWith('side-upper') ? { code: 'above-dart' } : { code: 'other-edge' };
      const right = edges.includes(on);
      const about = { edge: on, wanted: edges[0]! };
      const found = fact(code, right, { where: at(point), cause, about });
      return right && after.opened ? [found, ...placed(after.opened, on, i, point, spec)] : [found];
    }
    const edge = findEdge(front, edges[0]!);
    const there = edge && footOnChain(edge.chain, point);
    if (!there) return [missing(code)];
    return [
      near(code, 'mm', there.distance, 0, tolerance(spec, 'end'), {
        where: dimension(point, there.point),
        cause: { code: 'stops-short' },
        about: { wanted: edges[0]! },
      }),
    ];
  });
};
