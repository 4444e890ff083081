import { applyTo } from './isometry.ts';
import { samePoint } from './point.ts';
import { cubic, line, reverse } from './segment.ts';
import type { Chain, Isometry, Point, Segment } from './types.ts';

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
