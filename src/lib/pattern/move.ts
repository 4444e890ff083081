import type { Chain, Isometry, Point, Segment } from '../geometry/types.ts';
import type { Part } from './types.ts';
import { applyTo, compose } from '../geometry/isometry.ts';
import { cubic, line } from '../geometry/segment.ts';
import { withEdge, withLine, withPart } from './with.ts';

/** A point that a motion must take to an exact place (it does so up to rounding anyway). */
export type Pin = readonly [from: Point, to: Point];

/**
 * The part moved rigidly, with all that is drawn on it. Equal points stay equal, bit for bit; `pins` says where points go
 * that must fall on others exactly, such as the pivot on itself.
 */
export function movePart(part: Part, motion: Isometry, pins: readonly Pin[]): Part {
  const to = (p: Point): Point => {
    for (const [from, exactly] of pins) if (from.x === p.x && from.y === p.y) return exactly;
    return applyTo(motion, p);
  };
  const segment = (s: Segment): Segment =>
    s.kind === 'line'
      ? line(to(s.a), to(s.d))
      : cubic(to(s.a), applyTo(motion, s.b), applyTo(motion, s.c), to(s.d));
  const chain = (c: Chain): Chain => c.map(segment);
  const landmarks: Record<string, Point> = {};
  for (const id in part.landmarks) landmarks[id] = to(part.landmarks[id]!);
  return withPart(part, {
    edges: part.edges.map((e) => withEdge(e, { chain: chain(e.chain) })),
    lines: part.lines.map((l) => withLine(l, { chain: chain(l.chain) })),
    landmarks,
    motion: compose(motion, part.motion),
  });
}
