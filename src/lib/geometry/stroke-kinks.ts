import type { Point } from './types.ts';
import { add, cross, distance, lerp, norm, scale, sub } from './point.ts';
import { angleBetween, radians } from './trig.ts';

/** A place of a stroke where its direction breaks. */
export interface Kink {
  /** Where it breaks: at the crossing of the ways before and after it, which may lie between two points of the stroke. */
  readonly point: Point;
  /** Index of the stroke's last point before it. */
  readonly after: number;
  /** Radians, 0 to π. */
  readonly angle: number;
}

/** The direction before and after a point is taken over about this stretch, mm; kinks nearer than twice that are one (ours). */
const REACH = 12;
/** A point's own place is the middle of the points as near as this, mm, so that a trembling hand makes no kinks (ours). */
const OWN = 3;
/** A stroke that turns by less than this is only bent, radians (ours). */
const LEAST = radians(40);
/** It must also turn faster than round a circle of this radius, mm: where the points lie far apart, a bend is no kink (ours). */
const TIGHTEST = 17;
/** The turn must stand out so many times from what the hand's tremor does to it. */
const STANDS_OUT = 4;

/**
 * The kinks of a stroke, measured on its own points: where the way from what lies behind a point to what lies before it turns by
 * more than 40° within about 12 mm, and by clearly more than the tremor of the stroke (`tremor`, mm) explains. The last 12 mm at
 * either end have none: there the pen is put down and lifted.
 */
export function kinksOf(points: readonly Point[], tremor: number): readonly Kink[] {
  const found: { readonly index: number; readonly angle: number }[] = [];
  const last = points.length - 1;
  for (let i = 1; i < last; i++) {
    const p = points[i]!;
    if (distance(p, points[0]!) < REACH || distance(p, points[last]!) < REACH) continue;
    const own = around(points, i);
    const behind = side(points, i, -1);
    const before = side(points, i, 1);
    const u = sub(own.mean, behind.mean);
    const v = sub(before.mean, own.mean);
    const angle = Math.abs(angleBetween(u, v));
    const apart = (norm(u) + norm(v)) / 2;
    const noise = (tremor / apart) * Math.sqrt(4 / own.count + 1 / behind.count + 1 / before.count);
    if (angle <= LEAST + STANDS_OUT * noise || angle * TIGHTEST <= apart) continue;
    const near = found[found.length - 1];
    if (near === undefined || distance(p, points[near.index]!) > 2 * REACH) found.push({ index: i, angle });
    else if (angle > near.angle) found[found.length - 1] = { index: i, angle };
  }
  return found.map(({ index, angle }) => ({ ...corner(points, index), angle }));
}

/** How far from the stroke's own point nearest to it a corner may be found, mm. */
const BESIDE = 6;

/** The corner at a point of the stroke: where the straight ways up to it and on from it cross, if that is near by. */
function corner(points: readonly Point[], i: number): Pick<Kink, 'point' | 'after'> {
  const p = points[i]!;
  const [a, b] = [wayOf(points, i, -1), wayOf(points, i, 1)];
  const own = { point: p, after: i - 1 };
  if (a === undefined || b === undefined) return own;
  const across = cross(a.way, b.way);
  if (across === 0) return own;
  const k = cross(sub(b.from, a.from), b.way) / across;
  const point = add(a.from, scale(a.way, k));
  if (!(distance(point, p) <= BESIDE)) return own;
  // The point belongs to the way that it lies nearer to.
  const off = ({ from, way }: Way): number => Math.abs(cross(sub(p, from), way)) / norm(way);
  return { point, after: off(a) <= off(b) ? i : i - 1 };
}

interface Way {
  readonly from: Point;
  readonly way: Point;
}

/** The way of the stroke towards a point on one side of it, from the middles of what is near and of what is farther off. */
function wayOf(points: readonly Point[], i: number, way: 1 | -1): Way | undefined {
  const near: Point[] = [];
  const far: Point[] = [];
  for (let j = i + way; j >= 0 && j < points.length; j += way) {
    const d = distance(points[j]!, points[i]!);
    if (d > 2 * REACH) break;
    (d > REACH ? far : near).push(points[j]!);
  }
  if (near.length === 0 || far.length === 0) return undefined;
  const from = middle(far).mean;
  return { from, way: sub(middle(near).mean, from) };
}

interface Middle {
  readonly mean: Point;
  readonly count: number;
}

function middle(points: readonly Point[]): Middle {
  let [x, y] = [0, 0];
  for (const p of points) {
    x += p.x;
    y += p.y;
  }
  return { mean: { x: x / points.length, y: y / points.length }, count: points.length };
}

/** The middle of the stroke's points next to one of them. */
function around(points: readonly Point[], i: number): Middle {
  const p = points[i]!;
  let k = 0;
  while (i - k > 0 && i + k < points.length - 1) {
    if (distance(points[i - k - 1]!, p) > OWN || distance(points[i + k + 1]!, p) > OWN) break;
    k++;
  }
  return middle(points.slice(i - k, i + k + 1));
}

/** The middle of the stroke's points up to twice the reach to one side of a point; the first one counts however far it lies. */
function side(points: readonly Point[], i: number, way: 1 | -1): Middle {
  const out: Point[] = [];
  for (let j = i + way; j >= 0 && j < points.length; j += way) {
    if (out.length > 0 && distance(points[j]!, points[i]!) > 2 * REACH) break;
    out.push(points[j]!);
  }
  return middle(out);
}

/**
 * The tremor of a stroke: standard deviation of its points about the way that the hand meant, mm across it. Each point is
 * held against its two neighbours and what that gives against the same at its neighbours, so that a bend alone gives nothing; the
 * median of that tells, so that kinks and stops do not. 0 for fewer than seven points.
 */
export function tremorOf(points: readonly Point[]): number {
  if (points.length < 7) return 0;
  const off: Point[] = [];
  for (let i = 1; i < points.length - 1; i++) {
    const [a, p, b] = [points[i - 1]!, points[i]!, points[i + 1]!];
    const whole = distance(a, p) + distance(p, b);
    off.push(sub(p, lerp(a, b, whole > 0 ? distance(a, p) / whole : 0.5)));
  }
  const left: number[] = [];
  for (let i = 1; i < off.length - 1; i++) {
    const [a, p, b] = [off[i - 1]!, off[i]!, off[i + 1]!];
    left.push(norm({ x: p.x - (a.x + b.x) / 2, y: p.y - (a.y + b.y) / 2 }));
  }
  left.sort((a, b) => a - b);
  return left[Math.floor(left.length / 2)]! / (MEDIAN * SUM);
}

/** Median size of a number with standard deviation 1: along the stroke a point is held against its own place, so it errs across only. */
const MEDIAN = 0.6744897501960817;
/** Root of the sum of squares of 1/4, −1, 3/2, −1, 1/4, by which the points enter what is left. */
const SUM = 2.0916500663351889;
