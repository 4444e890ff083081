import { chainLength, pointAtLength } from '../../geometry/chain.ts';
import { dot, norm, sub, unit } from '../../geometry/point.ts';
import type { Point } from '../../geometry/types.ts';
import { findEdge, landmark } from '../../pattern/outline.ts';
import type { Anchor } from '../../recipe/types.ts';
import { numberOf, textOf, type Worked } from './give.ts';

const BUST = 'right/bust-point';

/** The places on the block's edge at which the slashes begin, as fractions and points, evenly `spacing` mm apart round `at`. */
function startsOn(hand: Parameters<Worked>[0]): readonly { readonly at: number; readonly point: Point }[] {
  const { rule, work } = hand;
  const chain = work.opened && findEdge(work.opened, textOf(rule, 'edge'))?.chain;
  if (!chain) return [];
  const whole = chainLength(chain);
  const count = numberOf(rule, 'count');
  const middle = numberOf(rule, 'at') * whole;
  return Array.from({ length: count }, (_, i) => {
    const mm = middle + (i - (count - 1) / 2) * numberOf(rule, 'spacing');
    return { at: mm / whole, point: pointAtLength(chain, mm) };
  });
}

/** Several slashes straight to the bust point: `worked: {by: "spaced-slashes", edge, at, spacing, count}`, mm of edge between them. */
export const spacedSlashes: Worked = (hand) => {
  const edge = textOf(hand.rule, 'edge');
  startsOn(hand).forEach(({ at }, i) => {
    const from: Anchor = { on: edge, at };
    hand.give({ do: 'draw-slash', slash: `slash-${i + 1}`, from, to: { landmark: BUST } });
  });
};

/**
 * Parallel slashes, each over an alternate pivot `radius` mm from the bust point: the same with `worked: {by: "parallel-slashes", ...,
 * radius}`. They run as the line from the middle of them to the bust point does, and bend where they come that near.
 */
export const parallelSlashes: Worked = (hand) => {
  const edge = textOf(hand.rule, 'edge');
  const bust = hand.work.opened && landmark(hand.work.opened, BUST);
  const starts = startsOn(hand);
  const [first, last] = [starts[0], starts.at(-1)];
  if (!bust || !first || !last) return;
  const middle = { x: (first.point.x + last.point.x) / 2, y: (first.point.y + last.point.y) / 2 };
  const along = unit(sub(bust, middle));
  const radius = numberOf(hand.rule, 'radius');
  starts.forEach(({ at, point }, i) => {
    const to = sub(bust, point);
    const foot = dot(to, along);
    const aside2 = norm(to) * norm(to) - foot * foot;
    const short = Math.sqrt(Math.max(0, radius * radius - aside2));
    const via = { x: point.x + along.x * (foot - short), y: point.y + along.y * (foot - short) };
    const offset = { landmark: BUST, dx: via.x - bust.x, dy: via.y - bust.y };
    const from: Anchor = { on: edge, at };
    hand.give({ do: 'draw-slash', slash: `slash-${i + 1}`, from, via: offset, to: { landmark: BUST } });
  });
};
