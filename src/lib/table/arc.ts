import { arc } from 'd3-shape';
import { angleBetween, atan2, PI } from '../geometry/trig.ts';
import type { Point } from '../geometry/types.ts';

const RADIUS = 46;

/** The path of an arc from the ray towards u to the ray towards v, px round the origin. */
export function angleArc(u: Point, v: Point, radius = RADIUS): string {
  // d3 counts angles clockwise from twelve o'clock.
  const from = atan2(u.y, u.x) + PI / 2;
  return (
    arc()({
      innerRadius: radius,
      outerRadius: radius,
      startAngle: from,
      endAngle: from + angleBetween(u, v),
    }) ?? ''
  );
}
