import type { Chain, Point, Segment } from './types.ts';
import { derivativeAt, pointAt } from './segment.ts';
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

/** A point of the one chain: its parameter, itself, the speed there, and its foot on the other chain. */
interface Stop {
  readonly t: number;
  readonly at: Point;
  readonly speed: Point;
  readonly foot: Foot;
  readonly footSpeed: Point;
}

function stop(s: Segment, t: number, k: Chain): Stop {
  const at = pointAt(s, t);
  const foot = footOnChain(k, at);
  return { t, at, speed: derivativeAt(s, t), foot, footSpeed: derivativeAt(k[foot.segment]!, foot.t) };
}

/** The farthest any point of c lies from k, at least `best`. */
function farthest(c: Chain, k: Chain, best: number): number {
  if (c.length === 0) throw new RangeError('a chain needs at least one segment');
  for (const s of c) {
    const start = stop(s, 0, k);
    const end = stop(s, 1, k);
    best = farther(s, start, end, k, Math.max(best, start.foot.distance, end.foot.distance), 40);
  }
  return best;
}

function farther(s: Segment, from: Stop, to: Stop, k: Chain, best: number, depth: number): number {
  if (depth === 0 || bound(s, from, to, k) <= best + HAUSDORFF_ERROR) return best;
  const middle = stop(s, 0.5 * (from.t + to.t), k);
  if (middle.foot.distance > best) best = middle.foot.distance;
  best = farther(s, from, middle, k, best, depth - 1);
  return farther(s, middle, to, k, best, depth - 1);
}

/**
 * No point of s between two stops lies farther than this from k. Either: nobody gets farther than from an end plus half of the
 * way. Or, with both feet on one segment: walk both stretches side by side; the difference is itself a cubic, and its
 * control points bound it.
 */
function bound(s: Segment, from: Stop, to: Stop, k: Chain): number {
  const { foot: foot0 } = from;
  const { foot: foot1 } = to;
  const third = (to.t - from.t) / 3;
  // Legs of the stretch's control polygon, in at the start and out at the end.
  const ax = from.speed.x * third;
  const ay = from.speed.y * third;
  const bx = to.speed.x * third;
  const by = to.speed.y * third;
  const px = to.at.x - from.at.x;
  const py = to.at.y - from.at.y;
  const way = length(ax, ay) + length(px - ax - bx, py - ay - by) + length(bx, by);
  const walk = 0.5 * (foot0.distance + foot1.distance + way);
  if (foot0.segment !== foot1.segment) return walk;
  const ends = Math.max(foot0.distance, foot1.distance);
  if (s.kind === 'line' && k[foot0.segment]!.kind === 'line') return Math.min(walk, ends);
  const footThird = (foot1.t - foot0.t) / 3;
  const one = length(
    from.at.x - foot0.point.x + ax - from.footSpeed.x * footThird,
    from.at.y - foot0.point.y + ay - from.footSpeed.y * footThird,
  );
  const two = length(
    to.at.x - foot1.point.x - bx + to.footSpeed.x * footThird,
    to.at.y - foot1.point.y - by + to.footSpeed.y * footThird,
  );
  return Math.min(walk, Math.max(ends, one, two));
}

const length = (x: number, y: number): number => Math.sqrt(x * x + y * y);

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
