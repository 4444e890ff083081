import type { Point } from './types.ts';
import { type Basis, basisAt, blend } from './b-spline.ts';
import { solveBanded } from './banded.ts';
import { distance, norm, sub } from './point.ts';

export interface SplineFit {
  /** Control points of the B-spline (`b-spline.ts`); the first and the last are the run's own ends. */
  readonly control: readonly Point[];
  /** Largest and root mean square distance of the points from the curve, mm. */
  readonly worst: number;
  readonly rms: number;
  /** Largest mean of the offsets of `AVERAGED` neighbouring points, mm: small where only tremor is left. */
  readonly drift: number;
}

/** So many neighbouring points have their offsets averaged for `drift`. */
export const AVERAGED = 7;

/** How often each point is given the parameter of the place nearest to it before the curve is fitted again. */
const ROUNDS = 16;
/** From this round on, distances along the curve count less than those across it: points may slide along it. */
const SLIDING = 2;
/** How much less: the less, the sooner the fit is found, but a trembling stroke may then draw loops. */
const ALONG = 0.001;
/** Weight of even legs of the curve's polygon against all points together: it decides where the points hardly do. */
const CALM = 2e-6;

/**
 * The curve of `spans` cubics that runs closest to the points in the sense of least squares and starts and ends in the first and
 * last of them. `weights`: how much each point counts. Points must differ from their neighbours; at least two.
 * Sources: Schneider, An Algorithm for Automatically Fitting Digitized Curves, Graphics Gems I, 1990 (fit and parameters in turns);
 * Wang, Pottmann, Liu, Fitting B-spline curves to point clouds, ACM TOG 25(2), 2006 (distances across the curve).
 */
export function fitSpline(points: readonly Point[], weights: readonly number[], spans: number): SplineFit {
  let u: readonly number[] = chordParameters(points, spans);
  let control: readonly Point[] = [];
  let best: SplineFit | undefined;
  for (let round = 0; round < ROUNDS; round++) {
    const basis = u.map((one) => basisAt(one, spans));
    control = solve(points, weights, basis, spans, round < SLIDING ? undefined : control);
    u = points.map((p, i) => nearer(control, basis[i]!, u[i]!, p));
    const now = measured(points, weights, control, u);
    if (best === undefined || now.rms < best.rms) best = now;
  }
  return best!;
}

function measured(
  points: readonly Point[],
  weights: readonly number[],
  control: readonly Point[],
  u: readonly number[],
): SplineFit {
  let [worst, sum, total, drift] = [0, 0, 0, 0];
  const off = points.map((p, i) => {
    const { first, value } = basisAt(u[i]!, control.length - 3);
    return sub(blend(control, first, value), p);
  });
  const few: { x: number; y: number } = { x: 0, y: 0 };
  for (let i = 0; i < points.length; i++) {
    const d = norm(off[i]!);
    if (d > worst) worst = d;
    sum += weights[i]! * d * d;
    total += weights[i]!;
    few.x += off[i]!.x - (off[i - AVERAGED]?.x ?? 0);
    few.y += off[i]!.y - (off[i - AVERAGED]?.y ?? 0);
    if (i >= AVERAGED - 1) drift = Math.max(drift, norm(few) / AVERAGED);
  }
  return { control, worst, rms: Math.sqrt(sum / total), drift };
}

/** Parameters from 0 to `spans` in proportion to the way along the points. */
function chordParameters(points: readonly Point[], spans: number): number[] {
  const out = [0];
  for (let i = 1; i < points.length; i++) out.push(out[i - 1]! + distance(points[i - 1]!, points[i]!));
  const whole = out[out.length - 1]!;
  return out.map((s) => (s / whole) * spans);
}

/** One step from u towards the parameter of the place nearest to p, no farther than half a span. */
function nearer(control: readonly Point[], { first, value, slope }: Basis, u: number, p: Point): number {
  const at = blend(control, first, value);
  const way = blend(control, first, slope);
  const speed = way.x * way.x + way.y * way.y;
  if (!(speed > 0)) return u;
  const step = ((p.x - at.x) * way.x + (p.y - at.y) * way.y) / speed;
  return Math.min(control.length - 3, Math.max(0, u + Math.min(0.5, Math.max(-0.5, step))));
}

/** The control points for given parameters. Once there is a curve `before`, distances along it weigh less than those across it. */
function solve(
  points: readonly Point[],
  weights: readonly number[],
  basis: readonly Basis[],
  spans: number,
  before: readonly Point[] | undefined,
): readonly Point[] {
  const ends = [points[0]!, points[points.length - 1]!] as const;
  const inner = spans + 1;
  // Unknown are x and y of each inner control point in turn.
  const rows = Array.from({ length: 2 * inner }, () => new Array<number>(8).fill(0));
  const right = new Array<number>(2 * inner).fill(0);
  /** Wants the sum of `by` times the control points from `first` on at (x, y), weighed by the symmetric matrix (xx, xy; xy, yy). */
  const want = (
    first: number,
    by: readonly number[],
    x: number,
    y: number,
    xx: number,
    xy: number,
    yy: number,
  ): void => {
    for (let j = 0; j < by.length; j++) {
      const known = first + j === 0 ? ends[0] : first + j === inner + 1 ? ends[1] : undefined;
      if (known === undefined) continue;
      x -= by[j]! * known.x;
      y -= by[j]! * known.y;
    }
    for (let j = 0; j < by.length; j++) {
      const i = 2 * (first + j - 1);
      if (i < 0 || i >= 2 * inner) continue;
      right[i]! += by[j]! * (xx * x + xy * y);
      right[i + 1]! += by[j]! * (xy * x + yy * y);
      for (let k = 0; k <= j; k++) {
        const c = 2 * (first + k - 1);
        if (c < 0) continue;
        const both = by[j]! * by[k]!;
        rows[i]![7 - i + c]! += both * xx;
        rows[i + 1]![6 - i + c]! += both * xy;
        rows[i + 1]![7 - i + c]! += both * yy;
        if (c < i) rows[i]![8 - i + c]! += both * xy;
      }
    }
  };
  let total = 0;
  for (let n = 0; n < points.length; n++) {
    const { first, value, slope } = basis[n]!;
    const w = weights[n]!;
    total += w;
    let [xx, xy, yy] = [w, 0, w];
    if (before !== undefined) {
      const way = blend(before, first, slope);
      const square = way.x * way.x + way.y * way.y;
      if (square > 0) {
        const off = (w * (1 - ALONG)) / square;
        xx -= off * way.x * way.x;
        xy -= off * way.x * way.y;
        yy -= off * way.y * way.y;
      }
    }
    want(first, value, points[n]!.x, points[n]!.y, xx, xy, yy);
  }
  const calm = CALM * total;
  for (let j = 0; j < inner; j++) want(j, [1, -2, 1], 0, 0, calm, 0, calm);
  solveBanded(rows, right);
  const out: Point[] = [ends[0]];
  for (let i = 0; i < inner; i++) out.push({ x: right[2 * i]!, y: right[2 * i + 1]! });
  return [...out, ends[1]];
}
