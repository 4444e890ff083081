import type { Chain, Place, Segment } from './types.ts';
import { hullBox, pointAt } from './segment.ts';
import { CONTACT } from './contact.ts';
import { intersectSegments } from './meet.ts';
import { sharedStretch } from './overlap.ts';
import { addOnce, inOrder, placer, type Crossing, type Placer } from './self-meeting.ts';
export { intersectSegments, type Meeting } from './meet.ts';
export { isSimple, selfIntersections, type Crossing } from './self-meeting.ts';

/** A stretch in common, from place to place on either chain; `b` runs backwards where the chains run opposite ways. */
export interface Overlap {
  readonly a: readonly [Place, Place];
  readonly b: readonly [Place, Place];
}

function boxesApart(s: Segment, u: Segment): boolean {
  const a = hullBox(s);
  const b = hullBox(u);
  return (
    a.minX > b.maxX + CONTACT ||
    b.minX > a.maxX + CONTACT ||
    a.minY > b.maxY + CONTACT ||
    b.minY > a.maxY + CONTACT
  );
}

/**
 * Where two chains meet, in order along the first; a meeting at a joint is reported once, as the start of the segment that
 * begins there. Touches count; a stretch in common gives its ends, marked `overlap`.
 */
export function intersectChains(c: Chain, k: Chain): Crossing[] {
  const out: Crossing[] = [];
  let onC: Placer | undefined;
  let onK: Placer | undefined;
  for (let i = 0; i < c.length; i++) {
    for (let j = 0; j < k.length; j++) {
      if (boxesApart(c[i]!, k[j]!)) continue;
      for (const m of intersectSegments(c[i]!, k[j]!)) {
        onC ??= placer(c);
        onK ??= placer(k);
        addOnce(out, onC(i, m.t, m.point), onK(j, m.u, m.point), m);
      }
    }
  }
  return inOrder(out);
}

/** The stretches where two chains run on the same curve, segment by segment, in order along the first. */
export function overlaps(c: Chain, k: Chain): Overlap[] {
  const out: Overlap[] = [];
  const onC = placer(c);
  const onK = placer(k);
  for (let i = 0; i < c.length; i++) {
    for (let j = 0; j < k.length; j++) {
      if (boxesApart(c[i]!, k[j]!)) continue;
      const o = sharedStretch(c[i]!, k[j]!);
      if (o === undefined) continue;
      const from = pointAt(c[i]!, o.t0);
      const to = pointAt(c[i]!, o.t1);
      out.push({
        a: [onC(i, o.t0, from), onC(i, o.t1, to, true)],
        b: [onK(j, o.u0, from, o.u0 > o.u1), onK(j, o.u1, to, o.u0 < o.u1)],
      });
    }
  }
  return out.sort((p, q) => p.a[0].length - q.a[0].length);
}
