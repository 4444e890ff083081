import type { Box, Chain, Isometry, Place, Point, Segment } from './types.ts';
import { samePoint } from './point.ts';
import { applyTo } from './isometry.ts';
import { between, bounds, cubic, line, pointAt, reverse, tangentAt } from './segment.ts';
import { parameterAtLength, segmentLength } from './length.ts';

/** Lengths closer than this to a joint are the joint: no slivers (mm). */
export const JOINT = 1e-9;

function notEmpty(c: Chain): void {
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

/**
 * The part from `from` to `to`, mm along the chain (clamped to it). The ends are the chain's own points, bit for bit, at 0
 * and at full length, and equal those of pointAtLength elsewhere. Throws RangeError when nothing lies between.
 */
export function subchain(c: Chain, from: number, to: number): Chain {
  const a = placeAtLength(c, from);
  const b = placeAtLength(c, to);
  if (!(b.length - a.length > JOINT)) throw new RangeError(`no chain lies between ${from} mm and ${to} mm`);
  return betweenPlaces(c, a, b);
}

/** Cuts `mm` along the chain; both parts hold the very same point. Throws RangeError at the ends. */
export function splitChain(c: Chain, mm: number): [Chain, Chain] {
  const p = placeAtLength(c, mm);
  const last = c.length - 1;
  const start: Place = { segment: 0, t: 0, length: 0, point: c[0]!.a };
  const end: Place = { segment: last, t: 1, length: Infinity, point: c[last]!.d };
  if (p.segment === 0 && p.t === 0) throw new RangeError('cannot cut a chain at its start');
  if (p.segment === last && p.t === 1) throw new RangeError('cannot cut a chain at its end');
  return [betweenPlaces(c, start, p), betweenPlaces(c, p, end)];
}

/** The same chain run the other way. */
export function reverseChain(c: Chain): Chain {
  // (A copy to write over has the right room from the start.)
  const out: Segment[] = c.slice();
  const last = c.length - 1;
  for (let i = 0; i <= last; i++) out[i] = reverse(c[last - i]!);
  return out;
}

/** The chain moved by m; joints stay joints, bit for bit. */
export function transformChain(c: Chain, m: Isometry): Chain {
  const out: Segment[] = c.slice();
  let was: Point | undefined;
  let became: Point | undefined;
  for (let i = 0; i < c.length; i++) {
    const s = c[i]!;
    const a: Point = was !== undefined && samePoint(was, s.a) ? became! : applyTo(m, s.a);
    const d: Point = applyTo(m, s.d);
    out[i] = s.kind === 'line' ? line(a, d) : cubic(a, applyTo(m, s.b), applyTo(m, s.c), d);
    was = s.d;
    became = d;
  }
  return out;
}

/** The chain's mirror image under the reflection m, run the other way, so that an outline goes round as before. */
export function mirrorChain(c: Chain, m: Isometry): Chain {
  const out: Segment[] = c.slice();
  const last = c.length - 1;
  let was: Point | undefined;
  let became: Point | undefined;
  for (let i = 0; i <= last; i++) {
    const s = c[i]!;
    const a: Point = was !== undefined && samePoint(was, s.a) ? became! : applyTo(m, s.a);
    const d: Point = applyTo(m, s.d);
    out[last - i] = s.kind === 'line' ? line(d, a) : cubic(d, applyTo(m, s.c), applyTo(m, s.b), a);
    was = s.d;
    became = d;
  }
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

/**
 * Points along the chain, no more than `tolerance` mm from it between neighbours; for drawing and for tests against
 * programs that know only polygons, never to measure with. Wang's bound on the second differences gives the count.
 */
export function polyline(c: Chain, tolerance: number): Point[] {
  notEmpty(c);
  const out: Point[] = [c[0]!.a];
  for (const s of c) {
    if (s.kind === 'cubic') {
      const bend = Math.max(
        second(s.a.x, s.b.x, s.c.x, s.a.y, s.b.y, s.c.y),
        second(s.b.x, s.c.x, s.d.x, s.b.y, s.c.y, s.d.y),
      );
      const n = Math.max(1, Math.ceil(Math.sqrt((0.75 * bend) / tolerance)));
      for (let i = 1; i < n; i++) out.push(pointAt(s, i / n));
    }
    out.push(s.d);
  }
  return out;
}

function second(ax: number, bx: number, cx: number, ay: number, by: number, cy: number): number {
  const x = ax - 2 * bx + cx;
  const y = ay - 2 * by + cy;
  return Math.sqrt(x * x + y * y);
}
