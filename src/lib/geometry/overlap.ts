import type { Point, Segment } from './types.ts';
import { pointAt } from './segment.ts';
import { nearestOnSegment } from './nearest.ts';
import { segmentLength } from './length.ts';

/** A stretch that two segments share, by parameter; `u0` belongs to `t0`, so u runs backwards when they run opposite ways. */
export interface Shared {
  readonly t0: number;
  readonly t1: number;
  readonly u0: number;
  readonly u1: number;
}

/** Copies of one curve that were cut or moved agree to about 1e-12 mm; other curves do not stay this close (mm). */
const SAME_CURVE = 1e-8;
/** Shared stretches shorter than this are a contact (mm). */
const SHORTEST = 1e-5;
/** Different cubics meet in nine points at most (Bézout), so this many inner points in common prove one curve. */
const PROBES = 10;

/**
 * The stretch where two segments run on the same curve, or undefined. Such a stretch always starts and ends at an end of
 * one of them.
 */
export function sharedStretch(s: Segment, u: Segment): Shared | undefined {
  const ends: { t: number; u: number }[] = [];
  const onU = (p: Point, t: number): void => {
    const n = nearestOnSegment(u, p);
    if (n.distance <= SAME_CURVE) ends.push({ t, u: n.t });
  };
  const onS = (p: Point, at: number): void => {
    const n = nearestOnSegment(s, p);
    if (n.distance <= SAME_CURVE) ends.push({ t: n.t, u: at });
  };
  onU(s.a, 0);
  onU(s.d, 1);
  onS(u.a, 0);
  onS(u.d, 1);
  if (ends.length < 2) return undefined;
  let first = ends[0]!;
  let last = first;
  for (const e of ends) {
    if (e.t < first.t) first = e;
    if (e.t > last.t) last = e;
  }
  if (!(last.t - first.t > 0) || segmentLength(s, first.t, last.t) < SHORTEST) return undefined;
  for (let i = 1; i <= PROBES; i++) {
    const p = pointAt(s, first.t + ((last.t - first.t) * i) / (PROBES + 1));
    if (nearestOnSegment(u, p).distance > SAME_CURVE) return undefined;
  }
  return { t0: first.t, t1: last.t, u0: first.u, u1: last.u };
}
