import { chainEnd, chainStart } from '../../geometry/chain.ts';
import { footOnChain } from '../../geometry/nearest.ts';
import { findEdge } from '../../pattern/outline.ts';
import { at, dimension, fact, missing, names, near, refusedBy, tolerance } from '../finding.ts';
import { pieceOf, styleLine } from '../table.ts';
import type { Check, Finding } from '../types.ts';

/**
 * Step 3: each end of the style line lies on the edge it should: `names.line`, `names.start`, `names.end` (edge ids, any of them).
 * Tolerance `end` in mm is for the gap of an end that stops short or runs over.
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
  return drawn.ends.map((on, i): Finding => {
    const edges = wanted[i]!;
    const code = `line-ends/${i === 0 ? 'start' : 'end'}`;
    const point = i === 0 ? chainStart(drawn.chain) : chainEnd(drawn.chain);
    if (on !== undefined) {
      const cause = on.endsWith('side-upper') ? { code: 'above-dart' } : { code: 'other-edge' };
      return fact(code, edges.includes(on), {
        where: at(point),
        cause,
        about: { edge: on, wanted: edges[0]! },
      });
    }
    const edge = findEdge(front, edges[0]!);
    const there = edge && footOnChain(edge.chain, point);
    if (!there) return missing(code);
    return near(code, 'mm', there.distance, 0, tolerance(spec, 'end'), {
      where: dimension(point, there.point),
      cause: { code: 'stops-short' },
      about: { wanted: edges[0]! },
    });
  });
};
