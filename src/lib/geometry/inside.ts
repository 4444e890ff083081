import { orient2d } from 'robust-predicates';
import type { Chain, Point } from './types.ts';
import { hullDistance2, nearestOnSegment } from './nearest.ts';

/** Whether p lies inside a closed chain (winding number not zero), outside, or within `band` mm of its edge. */
export function contains(c: Chain, p: Point, band = 1e-6): 'inside' | 'edge' | 'outside' {
  const winding = turnsAround(c, p, band);
  return winding === undefined ? 'edge' : winding === 0 ? 'outside' : 'inside';
}

/**
 * How often a chain, of which the rest of a closed one may follow, winds round p (clockwise on the screen); undefined within `band` mm
 * of it.
 */
export function turnsAround(c: Chain, p: Point, band = 1e-6): number | undefined {
  let winding = 0;
  for (const s of c) {
    if (hullDistance2(s, p) <= band * band && nearestOnSegment(s, p).distance <= band) return undefined;
    const { a, d } = s;
    if (s.kind === 'line') winding += lineTurns(a.x, a.y, d.x, d.y, p);
    else winding += cubicTurns(a.x, a.y, s.b.x, s.b.y, s.c.x, s.c.y, d.x, d.y, p, 50);
  }
  return winding;
}

/**
 * +1 or −1 when the line crosses the ray from p to the right; its upper end counts, its lower does not. On which side p lies is told
 * exactly, however near to the line it is.
 */
function lineTurns(ax: number, ay: number, dx: number, dy: number, p: Point): number {
  if (ay > p.y === dy > p.y) return 0;
  const side = -orient2d(ax, ay, dx, dy, p.x, p.y);
  if (dy > p.y) return side > 0 ? 1 : 0;
  return side < 0 ? -1 : 0;
}

/** The same for a cubic: halved until the ray clearly misses it or it lies wholly to the right, where only its ends count. */
function cubicTurns(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  cx: number,
  cy: number,
  dx: number,
  dy: number,
  p: Point,
  depth: number,
): number {
  const { x, y } = p;
  if (ay > y && by > y && cy > y && dy > y) return 0;
  if (ay <= y && by <= y && cy <= y && dy <= y) return 0;
  if (ax <= x && bx <= x && cx <= x && dx <= x) return 0;
  if (ax > x && bx > x && cx > x && dx > x) return ay > y === dy > y ? 0 : dy > y ? 1 : -1;
  if (depth === 0) return lineTurns(ax, ay, dx, dy, p);
  const abx = 0.5 * (ax + bx);
  const aby = 0.5 * (ay + by);
  const bcx = 0.5 * (bx + cx);
  const bcy = 0.5 * (by + cy);
  const cdx = 0.5 * (cx + dx);
  const cdy = 0.5 * (cy + dy);
  const abcx = 0.5 * (abx + bcx);
  const abcy = 0.5 * (aby + bcy);
  const bcdx = 0.5 * (bcx + cdx);
  const bcdy = 0.5 * (bcy + cdy);
  const mx = 0.5 * (abcx + bcdx);
  const my = 0.5 * (abcy + bcdy);
  return (
    cubicTurns(ax, ay, abx, aby, abcx, abcy, mx, my, p, depth - 1) +
    cubicTurns(mx, my, bcdx, bcdy, cdx, cdy, dx, dy, p, depth - 1)
  );
}
