import type { Chain, Isometry, Point, Segment } from '../geometry/types.ts';
import type { Part } from './types.ts';
import { applyTo, compose } from '../geometry/isometry.ts';
import { cubic, line } from '../geometry/segment.ts';
import { openPart, withEdge } from './with.ts';
import { withLine } from './with-marks.ts';

/** A point that a motion must take to an exact place (it does so up to rounding anyway). */
export type Pin = readonly [from: Point, to: Point];

/**
 * The part moved rigidly, with all that is drawn on it. Equal points stay equal, bit for bit; `pins` says where points go
 * that must fall on others exactly, such as the pivot on itself. `grain`: what is left of the part's grain.
 */
export function movePart(
  part: Part,
  motion: Isometry,
  pins: readonly Pin[],
  grain: Part['grain'] = part.grain,
): Part {
  const next = openPart(part);
  next.edges = part.edges.map((e) => withEdge(e, { chain: moveChain(e.chain, motion, pins) }));
  next.lines = part.lines.map((l) => withLine(l, { chain: moveChain(l.chain, motion, pins) }));
  const landmarks: Record<string, Point> = { ...part.landmarks };
  for (const id in landmarks) landmarks[id] = movePoint(landmarks[id]!, motion, pins);
  next.landmarks = landmarks;
  next.grain = grain;
  next.motion = compose(motion, part.motion);
  return next;
}

function movePoint(p: Point, motion: Isometry, pins: readonly Pin[]): Point {
  for (const [from, exactly] of pins) if (from.x === p.x && from.y === p.y) return exactly;
  return applyTo(motion, p);
}

function moveChain(c: Chain, motion: Isometry, pins: readonly Pin[]): Chain {
  const out: Segment[] = c.slice();
  let was: Point | undefined;
  let became: Point | undefined;
  for (let i = 0; i < c.length; i++) {
    const s = c[i]!;
    const a: Point = s.a === was ? became! : movePoint(s.a, motion, pins);
    const d: Point = movePoint(s.d, motion, pins);
    out[i] = s.kind === 'line' ? line(a, d) : cubic(a, applyTo(motion, s.b), applyTo(motion, s.c), d);
    was = s.d;
    became = d;
  }
  return out;
}
