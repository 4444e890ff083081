import type { Chain, Cubic, Place, Point } from './types.ts';
import { samePoint } from './point.ts';
import { hullBox, leadsOn, pointAt } from './segment.ts';
import { segmentLength } from './length.ts';
import { CONTACT, type Meeting } from './contact.ts';
import { intersectSegments } from './meet.ts';

/** Where two chains, or one and itself, meet. */
export interface Crossing extends Omit<Meeting, 't' | 'u'> {
  readonly a: Place;
  readonly b: Place;
}

export type Placer = (segment: number, t: number, point: Point, keep?: boolean) => Place;

/** Turns segment parameters into places, with the lengths before each segment summed once; `keep` keeps a segment's end. */
export function placer(c: Chain): Placer {
  const before: number[] = [0];
  const closed = c.length > 0 && samePoint(c[0]!.a, c[c.length - 1]!.d);
  return (segment, t, point, keep = false) => {
    if (t === 1 && !keep && (segment + 1 < c.length || closed)) {
      // A joint is the start of the next segment, and the end of a closed chain its start.
      segment = segment + 1 < c.length ? segment + 1 : 0;
      t = 0;
    }
    for (let i = before.length; i <= segment; i++) before.push(before[i - 1]! + segmentLength(c[i - 1]!));
    return { segment, t, length: before[segment]! + segmentLength(c[segment]!, 0, t), point };
  };
}

type Rest = Omit<Crossing, 'a' | 'b'>;

/** Each place once: at a joint both neighbours report. */
export function addOnce(out: Crossing[], a: Place, b: Place, { point, tangent, overlap }: Rest): void {
  for (const y of out) {
    if (
      Math.abs(point.x - y.point.x) <= 4 * CONTACT &&
      Math.abs(point.y - y.point.y) <= 4 * CONTACT &&
      sameSpot(a, y.a) &&
      sameSpot(b, y.b)
    )
      return;
  }
  out.push({ a, b, point, tangent, overlap });
}

const sameSpot = (p: Place, q: Place): boolean =>
  (p.segment === q.segment && p.t === q.t) || Math.abs(p.length - q.length) < 1e-6;

export const inOrder = (out: Crossing[]): Crossing[] =>
  out.sort((p, q) => p.a.length - q.a.length || p.b.length - q.b.length);

/**
 * Where a chain meets itself, other than in its joints: `a` comes before `b`. Fold-backs along the same curve give the
 * ends of the stretch, marked `overlap`. No more than `most` are looked for: a scribble can have thousands.
 */
export function selfIntersections(c: Chain, most = Infinity): Crossing[] {
  const out: Crossing[] = [];
  let place: Placer | undefined;
  meetItself(c, (i, t, j, u, rest) => {
    place ??= placer(c);
    const a = place(i, t, rest.point);
    const b = place(j, u, rest.point);
    if (a.length <= b.length) addOnce(out, a, b, rest);
    else addOnce(out, b, a, rest);
    return out.length >= most;
  });
  return inOrder(out);
}

/** Whether a chain neither crosses nor touches itself (its joints, and the closing of a closed chain, apart). */
export const isSimple = (c: Chain): boolean => !meetItself(c, () => true);

/** Reports the meetings of a chain with itself until `report` says to stop; true when stopped. */
function meetItself(
  c: Chain,
  report: (i: number, t: number, j: number, u: number, rest: Rest) => boolean,
): boolean {
  // Segments of no length are passed over: their neighbours meet in them.
  const live: number[] = [];
  const box: number[] = [];
  for (let i = 0; i < c.length; i++) {
    const s = c[i]!;
    const b = hullBox(s);
    if (b.minX === b.maxX && b.minY === b.maxY) continue;
    live.push(i);
    box.push(b.minX, b.minY, b.maxX, b.maxY);
    if (s.kind === 'cubic') {
      const loop = loopOf(s);
      if (loop !== undefined && report(i, loop.t, i, loop.u, { point: loop.point })) return true;
    }
  }
  const n = live.length;
  const closed = n > 1 && samePoint(c[live[0]!]!.a, c[live[n - 1]!]!.d);
  for (let p = 0; p < n; p++) {
    const minX = box[4 * p]! - CONTACT;
    const minY = box[4 * p + 1]! - CONTACT;
    const maxX = box[4 * p + 2]! + CONTACT;
    const maxY = box[4 * p + 3]! + CONTACT;
    const s = c[live[p]!]!;
    for (let q = p + 1; q < n; q++) {
      if (box[4 * q]! > maxX || box[4 * q + 2]! < minX || box[4 * q + 1]! > maxY || box[4 * q + 3]! < minY)
        continue;
      const w = c[live[q]!]!;
      const next = q === p + 1;
      const wraps = closed && p === 0 && q === n - 1;
      if (next && !wraps && leadsOn(s, w)) continue;
      if (wraps && !next && leadsOn(w, s)) continue;
      for (const m of intersectSegments(s, w)) {
        const { t, u } = m;
        // Joints do not count. Of a fold-back the joint is one end and the other end reports it; two segments that run out
        // and back have joints at both.
        const joint = (next && t === 1 && u === 0) || (wraps && t === 0 && u === 1);
        if (joint && !(next && wraps && m.overlap === true)) continue;
        if (report(live[p]!, t, live[q]!, u, m)) return true;
      }
    }
  }
  return false;
}

/**
 * Where a cubic crosses itself: P(t) = P(u), divided by t − u, is linear in t + u and t·u. The closing of a cubic that ends
 * where it starts does not count.
 */
function loopOf(s: Cubic): { t: number; u: number; point: Point } | undefined {
  const ax = s.d.x - s.a.x + 3 * (s.b.x - s.c.x);
  const ay = s.d.y - s.a.y + 3 * (s.b.y - s.c.y);
  const bx = 3 * (s.a.x - 2 * s.b.x + s.c.x);
  const by = 3 * (s.a.y - 2 * s.b.y + s.c.y);
  const cx = 3 * (s.b.x - s.a.x);
  const cy = 3 * (s.b.y - s.a.y);
  const ab = ax * by - ay * bx;
  const aa = ax * ax + ay * ay;
  if (ab === 0 || aa === 0) return undefined;
  const sum = -(ax * cy - ay * cx) / ab;
  const product = sum * sum + ((bx * sum + cx) * ax + (by * sum + cy) * ay) / aa;
  const square = sum * sum - 4 * product;
  if (!(square > 1e-12)) return undefined;
  const root = Math.sqrt(square);
  const t = 0.5 * (sum - root);
  const u = 0.5 * (sum + root);
  if (!(t > -1e-12 && u < 1 + 1e-12)) return undefined;
  if (t < 1e-12 && u > 1 - 1e-12) return undefined;
  const from = Math.max(0, t);
  return { t: from, u: Math.min(1, u), point: pointAt(s, from) };
}
