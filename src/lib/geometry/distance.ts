import type { Chain, Point, Segment } from './types.ts';
import { between, pointAt } from './segment.ts';
import { footOnChain, type Foot } from './nearest.ts';
import { intersectChains } from './intersect.ts';

/** How near the answer of `hausdorff` is to the true value, mm. */
export const HAUSDORFF_ERROR = 1e-6;

/**
 * Hausdorff distance of two chains in mm: the farthest that any point of either lies from the other. Of the curves
 * themselves, not of points on them: parts that cannot be farther than what was found are dropped, the rest is halved. Within
 * 1e-6 mm. Throws RangeError when a chain is empty.
 */
export const hausdorff = (c: Chain, k: Chain): number => farthest(k, c, farthest(c, k, 0));

/** The farthest any point of c lies from k, at least `best`. */
function farthest(c: Chain, k: Chain, best: number): number {
  if (c.length === 0) throw new RangeError('a chain needs at least one segment');
  let start = footOnChain(k, c[0]!.a);
  best = Math.max(best, start.distance);
  for (const s of c) {
    const end = footOnChain(k, s.d);
    best = Math.max(best, end.distance);
    best = farther(s, 0, start, 1, end, k, best, 40);
    start = end;
  }
  return best;
}

function farther(
  s: Segment,
  t0: number,
  foot0: Foot,
  t1: number,
  foot1: Foot,
  k: Chain,
  best: number,
  depth: number,
): number {
  if (depth === 0 || bound(s, t0, foot0, t1, foot1, k) <= best + HAUSDORFF_ERROR) return best;
  const t = 0.5 * (t0 + t1);
  const foot = footOnChain(k, pointAt(s, t));
  if (foot.distance > best) best = foot.distance;
  best = farther(s, t0, foot0, t, foot, k, best, depth - 1);
  return farther(s, t, foot, t1, foot1, k, best, depth - 1);
}

/**
 * No point of s between t0 and t1 lies farther than this from k. Either: nobody gets farther than from an end plus half of the
 * way. Or, with both feet on one segment: walk both stretches side by side; the difference is itself a cubic, and its
 * control points bound it.
 */
function bound(s: Segment, t0: number, foot0: Foot, t1: number, foot1: Foot, k: Chain): number {
  const part = between(s, t0, t1);
  const { a, d } = part;
  let way: number;
  if (part.kind === 'line') way = gap(a, d);
  else way = gap(a, part.b) + gap(part.b, part.c) + gap(part.c, d);
  const walk = 0.5 * (foot0.distance + foot1.distance + way);
  if (foot0.segment !== foot1.segment) return walk;
  const ends = Math.max(foot0.distance, foot1.distance);
  const other = k[foot0.segment]!;
  if (part.kind === 'line' && other.kind === 'line') return Math.min(walk, ends);
  const { t: u0 } = foot0;
  const { t: u1 } = foot1;
  const beside = u0 === u1 ? undefined : between(other, u0, u1);
  const side = Math.max(
    ends,
    gap(control(part, 1), beside === undefined ? foot0.point : control(beside, 1)),
    gap(control(part, 2), beside === undefined ? foot0.point : control(beside, 2)),
  );
  return Math.min(walk, side);
}

/** Inner control points, also of a line seen as a cubic. */
function control(s: Segment, i: 1 | 2): Point {
  if (s.kind === 'cubic') return i === 1 ? s.b : s.c;
  const f = i / 3;
  return { x: s.a.x + (s.d.x - s.a.x) * f, y: s.a.y + (s.d.y - s.a.y) * f };
}

function gap(p: Point, q: Point): number {
  const x = p.x - q.x;
  const y = p.y - q.y;
  return Math.sqrt(x * x + y * y);
}

/**
 * Discrete Fréchet distance of two rows of points in mm: the shortest leash for two walkers who go from point to point and
 * never back. Throws RangeError when a row is empty.
 * Source: Eiter & Mannila, Computing discrete Fréchet distance, 1994; one row of the table is kept.
 */
export function discreteFrechet(p: readonly Point[], q: readonly Point[]): number {
  const m = q.length;
  if (p.length === 0 || m === 0) throw new RangeError('the Fréchet distance needs points on both sides');
  const qx = new Float64Array(m);
  const qy = new Float64Array(m);
  for (let j = 0; j < m; j++) {
    qx[j] = q[j]!.x;
    qy[j] = q[j]!.y;
  }
  // row[j]: square of the shortest leash up to here. Infinity stands for the row before the first.
  const row = new Float64Array(m).fill(Infinity);
  for (let i = 0; i < p.length; i++) {
    const { x, y } = p[i]!;
    let diagonal = i === 0 ? 0 : Infinity;
    let left = Infinity;
    for (let j = 0; j < m; j++) {
      const dx = x - qx[j]!;
      const dy = y - qy[j]!;
      const here = dx * dx + dy * dy;
      const up = row[j]!;
      let reach = up < left ? up : left;
      if (diagonal < reach) reach = diagonal;
      left = here > reach ? here : reach;
      row[j] = left;
      diagonal = up;
    }
  }
  return Math.sqrt(row[m - 1]!);
}

/** Places looked at on each cubic before the nearest are refined. */
const SAMPLES = 12;

/**
 * The least distance between two chains in mm; 0 when they meet. Each cubic is looked at in 13 places and every low place
 * is narrowed down to 1e-9 of its parameter. Throws RangeError when a chain is empty.
 */
export function minimumDistance(c: Chain, k: Chain): number {
  if (intersectChains(c, k).length > 0) return 0;
  return Math.min(nearestApproach(c, k), nearestApproach(k, c));
}

function nearestApproach(c: Chain, k: Chain): number {
  let best = Infinity;
  for (const s of c) {
    const at = (t: number): number => footOnChain(k, pointAt(s, t)).distance;
    const d: number[] = [];
    for (let i = 0; i <= SAMPLES; i++) d.push(at(i / SAMPLES));
    for (let i = 0; i <= SAMPLES; i++) {
      const low = d[i]! <= (d[i - 1] ?? Infinity) && d[i]! <= (d[i + 1] ?? Infinity);
      if (d[i]! < best) best = d[i]!;
      if (low)
        best = Math.min(best, narrow(at, Math.max(0, i - 1) / SAMPLES, Math.min(SAMPLES, i + 1) / SAMPLES));
    }
  }
  return best;
}

/** Least value of f on [low, high] by golden section. */
function narrow(f: (t: number) => number, low: number, high: number): number {
  const golden = 0.6180339887498949;
  let a = low;
  let b = high;
  let p = b - golden * (b - a);
  let q = a + golden * (b - a);
  let fp = f(p);
  let fq = f(q);
  while (b - a > 1e-9) {
    if (fp < fq) {
      b = q;
      q = p;
      fq = fp;
      p = b - golden * (b - a);
      fp = f(p);
    } else {
      a = p;
      p = q;
      fp = fq;
      q = a + golden * (b - a);
      fq = f(q);
    }
  }
  return Math.min(fp, fq);
}
