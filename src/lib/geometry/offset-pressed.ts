import type { Point, Segment } from './types.ts';
import { MITRE_LIMIT } from './offset-types.ts';
import type { Cut } from './offset-crossing.ts';
import { curvesMeet, inwards, lineMeets, withEnds } from './offset-crossing.ts';
import {
  along,
  pushLine,
  settled,
  stretched,
  within,
  type End,
  type Joint,
  type Turn,
} from './offset-end.ts';
import { lerp } from './point.ts';
import { between, line, reverse, transform } from './segment.ts';
import { reflectionAcross } from './isometry.ts';

/**
 * Square or reflected end of the first-sewn edge's allowance. Its seam line, run on, meets the other's cut line at q; from q
 * the end goes square to the seam line, or along the mirror image of the other's cut line, up to its own cut line. The
 * result runs from `first` to `other`. Undefined when it would reach past MITRE_LIMIT or the edges are too short for it.
 */
export function pressedEnd(first: End, other: End, turn: Turn, mirrored: boolean): Joint | undefined {
  const { seam, sin, cos } = turn;
  const far = MITRE_LIMIT * Math.max(first.w, other.w);
  const sq = other.w / sin;
  const sr = mirrored ? sq + (first.w * cos) / sin : sq;
  if (sq * sq > far * far || sr * sr + first.w * first.w > far * far) return undefined;
  const so = settled((-other.w * cos) / sin);
  // Where the first edge's seam line meets the other's cut line.
  let q = along(seam, first.away, sq);
  let otherCut: Cut | undefined;
  const tail: Segment[] = [];
  if (so < 0 && !other.run.straight) {
    otherCut = other.run.cusped ? undefined : lineMeets(other.run.segments, other.last, seam, first.away);
    if (!otherCut) return undefined;
    q = otherCut.point;
  } else if (other.run.straight) {
    otherCut = stretched(other, so, q);
    if (so < 0 && !within(otherCut)) return undefined;
  } else pushLine(tail, q, other.p);

  let end: Segment[];
  if (!mirrored || first.w === 0) {
    const s = (q.x - first.p.x) * first.away.x + (q.y - first.p.y) * first.away.y;
    end = [line(along(first.p, first.away, s), q)];
  } else if (other.run.straight) {
    end = [line(along(first.p, first.away, sr), q)];
  } else {
    const image = mirrorImage(first, other, seam, first.w, q, otherCut, tail[0]);
    if (!image) return undefined;
    end = image;
  }
  const head: Segment[] = [];
  const r = end[0]!.a;
  const s = settled((r.x - first.p.x) * first.away.x + (r.y - first.p.y) * first.away.y);
  let firstCut: Cut | undefined;
  if (first.run.straight) {
    firstCut = stretched(first, s, r);
    if (s < 0 && !within(firstCut)) return undefined;
  } else if (s >= 0) pushLine(head, first.p, r);
  else {
    // The end leans back over a curve: it goes on until it meets the curve itself, which may lie higher than its tangent.
    if (first.run.cusped) return undefined;
    const own = first.last ? first.run.segments : first.run.segments.map(reverse).reverse();
    if (other.run.straight) end = [line(lerp(q, r, 1.5), q)];
    else end = mirrorImage(first, other, seam, 1.5 * first.w, q, otherCut, tail[0]) ?? end;
    const found = curvesMeet(own, end);
    if (!found) return undefined;
    const { segment, t, point } = found.before;
    firstCut = first.last
      ? found.before
      : { segment: first.run.segments.length - 1 - segment, t: 1 - t, point };
    const cutEnd = end[found.after.segment]!;
    end = [
      withEnds(between(cutEnd, found.after.t, 1), point, cutEnd.d),
      ...end.slice(found.after.segment + 1),
    ];
  }
  const only = end.filter((e) => e.a.x !== e.d.x || e.a.y !== e.d.y);
  return { before: firstCut, after: otherCut, path: [...head, ...only, ...tail] };
}

/** The mirror image, in the first edge's seam line, of the other's cut line from q to `depth` mm inside that seam line. */
function mirrorImage(
  first: End,
  other: End,
  seam: Point,
  depth: number,
  q: Point,
  cut: Cut | undefined,
  lead: Segment | undefined,
): Segment[] | undefined {
  const along1: Segment[] = inwards(other.run.segments, other.last, cut);
  if (lead) along1.unshift(lead);
  const inside = along(seam, first.n, -depth);
  const hit = lineMeets(along1, false, inside, first.away);
  if (!hit) return undefined;
  const mirror = reflectionAcross(seam, along(seam, first.away, 1));
  const image: Segment[] = [];
  let start = q;
  for (let i = 0; i <= hit.segment; i++) {
    const s = i === hit.segment ? between(along1[i]!, 0, hit.t) : along1[i]!;
    const m = transform(s, mirror);
    const fitted = withEnds(m, start, m.d);
    image.push(fitted);
    start = fitted.d;
  }
  return image.map(reverse).reverse();
}
