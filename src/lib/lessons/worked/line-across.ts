import { chainStart } from '../../geometry/chain.ts';
import { nearestOnChain } from '../../geometry/nearest.ts';
import { distance } from '../../geometry/point.ts';
import { splineThrough } from '../../geometry/spline.ts';
import type { Point } from '../../geometry/types.ts';
import { anchorInside, chainOf, resolveAnchor } from '../../recipe/anchors.ts';
import type { Anchor, Work } from '../../recipe/types.ts';
import { landmarkAt, numberOf, textOf, type Hand, type Worked } from './give.ts';

/** The anchor on an edge at a fraction counted from the end at which a landmark stands. */
export function along(work: Work, edge: string, from: string, fraction: number): Anchor {
  const chain = chainOf(work, edge);
  const p = landmarkAt(work, from);
  const forward = chain !== undefined && p !== undefined && distance(chainStart(chain), p) < 1e-6;
  return { on: edge, at: forward ? fraction : 1 - fraction };
}

/**
 * Draws the style line `line` over the whole front with five points; the two by the bust points are pushed out until the curve itself passes them
 * at `pass` mm: the right one on the side of centre front, the left one towards the waist.
 */
export function drawAcross({ work, give }: Hand, first: Anchor, last: Anchor, pass: number): void {
  const b1 = landmarkAt(work, 'right/bust-point');
  const b2 = landmarkAt(work, 'left/bust-point');
  const start = resolveAnchor(work, first);
  const end = resolveAnchor(work, last);
  if (!b1 || !b2 || !start || !end) return;
  let k1 = pass;
  let k2 = pass;
  // Out of B1 towards the centre front and a little up, out of B2 towards the waist and a little to the centre.
  const points = (): Point[] => [
    start,
    { x: b1.x + 0.94 * k1, y: b1.y - 0.34 * k1 },
    { x: (b1.x + b2.x) / 2 - 8, y: (b1.y + b2.y) / 2 + 8 },
    { x: b2.x - 0.2 * k2, y: b2.y + 0.98 * k2 },
    end,
  ];
  for (let round = 0; round < 12; round++) {
    const line = splineThrough(points());
    k1 += pass - nearestOnChain(line, b1).distance;
    k2 += pass - nearestOnChain(line, b2).distance;
  }
  const inner = points().slice(1, -1);
  give({
    do: 'draw-line',
    line: 'line',
    points: [first, ...inner.map((p) => anchorInside(work, 'front', p)), last],
  });
}

/**
 * The same from and to places that the step says: `worked: {by: "line-across", start, startFrom, startAt, end, endFrom, endAt, pass}`: edges, the
 * landmarks at which they begin, fractions from there, and mm from the bust points.
 */
export const lineAcross: Worked = (hand) => {
  const { rule, work } = hand;
  const place = (which: 'start' | 'end'): Anchor =>
    along(work, textOf(rule, which), textOf(rule, `${which}From`), numberOf(rule, `${which}At`));
  drawAcross(hand, place('start'), place('end'), numberOf(rule, 'pass'));
};
