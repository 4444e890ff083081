import type { Chain } from './types.ts';
import { chainLength } from './chain.ts';
export { contains, turnsAround } from './inside.ts';
export { isSimple } from './intersect.ts';

/**
 * Area in mm² inside a closed chain, positive when it runs clockwise on the screen (y is down). Green's theorem, which is
 * exact on cubics; taken about the first point so that far-off coordinates do not cancel.
 */
export function signedArea(c: Chain): number {
  if (c.length === 0) return 0;
  const o = c[0]!.a;
  let twice = 0;
  for (const s of c) {
    const ax = s.a.x - o.x;
    const ay = s.a.y - o.y;
    const dx = s.d.x - o.x;
    const dy = s.d.y - o.y;
    if (s.kind === 'line') {
      twice += ax * dy - ay * dx;
      continue;
    }
    const bx = s.b.x - o.x;
    const by = s.b.y - o.y;
    const cx = s.c.x - o.x;
    const cy = s.c.y - o.y;
    // ∫ P × P' dt in Bernstein form: 6, 3, 1, 3, 3, 6 tenths of the six outer products.
    twice +=
      0.6 * (ax * by - ay * bx) +
      0.3 * (ax * cy - ay * cx) +
      0.1 * (ax * dy - ay * dx) +
      0.3 * (bx * cy - by * cx) +
      0.3 * (bx * dy - by * dx) +
      0.6 * (cx * dy - cy * dx);
  }
  return 0.5 * twice;
}

/** Length in mm around a closed chain. */
export const perimeter = (c: Chain): number => chainLength(c);
