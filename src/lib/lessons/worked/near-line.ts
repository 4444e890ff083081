import { nearestOnChain } from '../../geometry/nearest.ts';
import { splineThrough } from '../../geometry/spline.ts';
import type { Point } from '../../geometry/types.ts';
import { anchorInside, resolveAnchor } from '../../recipe/anchors.ts';
import type { Anchor } from '../../recipe/types.ts';
import { landmarkAt, numberOf, textOf, type Worked } from './give.ts';

/**
 * A style line from an edge past the bust point, on its centre-front side, down to another edge: `worked: {by: "near-line", start,
 * startAt, end, endAt, pass}`, fractions along the edges, `pass` mm from the bust point. The middle point is pushed out until the curve itself
 * passes at that distance.
 */
export const nearLine: Worked = (hand) => {
  const { rule, work, give } = hand;
  const first: Anchor = { on: textOf(rule, 'start'), at: numberOf(rule, 'startAt') };
  const last: Anchor = { on: textOf(rule, 'end'), at: numberOf(rule, 'endAt') };
  const [start, end] = [resolveAnchor(work, first), resolveAnchor(work, last)];
  const bust = landmarkAt(work, 'right/bust-point');
  if (!start || !end || !bust) return;
  const pass = numberOf(rule, 'pass');
  let off = pass;
  const middle = (): Point => ({ x: bust.x + off, y: bust.y });
  for (let round = 0; round < 12; round++)
    off += pass - nearestOnChain(splineThrough([start, middle(), end]), bust).distance;
  give({ do: 'draw-line', line: 'line', points: [first, anchorInside(work, 'front', middle()), last] });
};
