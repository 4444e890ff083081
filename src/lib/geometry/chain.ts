import type { Box, Chain, Place, Point, Segment } from './types.ts';
import { between, bounds, pointAt, tangentAt } from './segment.ts';
import { parameterAtLength, segmentLength } from './length.ts';

/** Lengths closer than this to a joint are the joint: no slivers (mm). */
export const JOINT = 1e-9;

/** Throws RangeError for a chain of nothing. */
export function notEmpty(c: Chain): void {
  if (c.length === 0) throw new RangeError('a chain needs at least one segment');
}

/** Length in mm. */
export function chainLength(c: Chain): number {
  let sum = 0;
  for (const s of c) sum += segmentLength(s);
  return sum;
}

export function chainStart(c: Chain): Point {
  notEmpty(c);
  return c[0]!.a;
}

export function chainEnd(c: Chain): Point {
  notEmpty(c);
  return c[c.length - 1]!.d;
}

/** The place `mm` along the chain; lengths before the start or past the end give the ends. */
export function placeAtLength(c: Chain, mm: number): Place {
  notEmpty(c);
  let before = 0;
  if (mm > JOINT) {
    for (let i = 0; i < c.length; i++) {
      const s = c[i]!;
      const own = segmentLength(s);
      const rest = mm - before;
      if (rest < own - JOINT) {
        if (rest <= JOINT) return { segment: i, t: 0, length: before, point: s.a };
        const t = parameterAtLength(s, rest, own);
        return { segment: i, t, length: mm, point: pointAt(s, t) };
      }
      before += own;
    }
    const last = c.length - 1;
    return { segment: last, t: 1, length: before, point: c[last]!.d };
  }
  return { segment: 0, t: 0, length: 0, point: c[0]!.a };
}

/** The point `mm` along the chain; lengths before the start or past the end give the ends. */
export const pointAtLength = (c: Chain, mm: number): Point => placeAtLength(c, mm).point;

/** Unit tangent, in the direction of travel, `mm` along the chain; at a joint that of the segment that starts there. */
export function tangentAtLength(c: Chain, mm: number): Point {
  const p = placeAtLength(c, mm);
  return tangentAt(c[p.segment]!, p.t);
}

/** The part between two places, a before b. */
export function betweenPlaces(c: Chain, a: Place, b: Place): Chain {
  if (a.segment === b.segment) return [between(c[a.segment]!, a.t, b.t)];
  const out: Segment[] = [];
  if (a.t < 1) out.push(between(c[a.segment]!, a.t, 1));
  for (let i = a.segment + 1; i < b.segment; i++) out.push(c[i]!);
  if (b.t > 0) out.push(between(c[b.segment]!, 0, b.t));
  return out;
}

/** The smallest upright box around the chain. */
export function chainBounds(c: Chain): Box {
  notEmpty(c);
  let { minX, minY, maxX, maxY } = bounds(c[0]!);
  for (let i = 1; i < c.length; i++) {
    const b = bounds(c[i]!);
    if (b.minX < minX) minX = b.minX;
    if (b.minY < minY) minY = b.minY;
    if (b.maxX > maxX) maxX = b.maxX;
    if (b.maxY > maxY) maxY = b.maxY;
  }
  return { minX, minY, maxX, maxY };
}
