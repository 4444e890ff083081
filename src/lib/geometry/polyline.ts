import { notEmpty } from './chain.ts';
import { pointAt } from './segment.ts';
import type { Chain, Point } from './types.ts';

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
