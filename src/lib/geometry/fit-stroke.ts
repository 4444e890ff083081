import type { Cubic, Point } from './types.ts';
import { cubicsOf } from './b-spline.ts';
import { AVERAGED, fitSpline, type SplineFit } from './fit-spline.ts';
import { distance } from './point.ts';
import { kinksOf, tremorOf } from './stroke-kinks.ts';

export interface FittedStroke {
  /** End to end; at their joints of one direction, but for those at kinks. */
  readonly cubics: readonly Cubic[];
  /** Where the stroke breaks its direction, and by how much (radians, 0 to π). */
  readonly kinks: readonly { readonly point: Point; readonly angle: number }[];
  /** Largest distance of the stroke's points from the curve, mm. */
  readonly worst: number;
  /** Standard deviation of the stroke's points by the hand's tremor, mm across it; see `tremorOf`. */
  readonly tremor: number;
}

/** Points of the stroke nearer to each other than this are one, mm: the pen stood still. */
const STILL = 0.5;
/** A cubic spans at least this much of the stroke, mm, so that the curve follows the line that was meant. */
const LEAST_SPAN = 40;
/** More than any line on a front needs. */
const MOST = 24;
/** More cubics are no gain when two more take less than this part of what is left away: then tremor is what is left. */
const GAIN = 0.15;
/** The tremor may have been taken for less than it is by so much. */
const SLACK = 1.3;
/** So many standard deviations off the way that was meant hardly one of some hundred points lies. */
const FARTHEST = 4;

/**
 * A stroke of the hand as few cubics: between its kinks, where the curve keeps its corner, as few as run within `tolerance` mm of
 * the stroke, its tremor allowed for. Where even cubics of 40 mm run farther off, these. The ends are the stroke's own. Throws
 * RangeError for a stroke of no length.
 */
export function fitStroke(stroke: readonly Point[], tolerance: number): FittedStroke {
  const points = thinned(stroke);
  if (points.length < 2) throw new RangeError('a stroke needs two different points');
  const tremor = tremorOf(points);
  const kinks = kinksOf(points, tremor);
  const cubics: Cubic[] = [];
  let worst = 0;
  let run: Point[] = [];
  const fitted = (): void => {
    const fit = fitRun(run, tolerance, tremor);
    cubics.push(...cubicsOf(fit.control));
    worst = Math.max(worst, fit.worst);
  };
  points.forEach((p, i) => {
    run.push(p);
    const kink = kinks.find((k) => k.after === i);
    if (kink === undefined) return;
    run.push(kink.point);
    fitted();
    run = [kink.point];
  });
  fitted();
  return { cubics, kinks: kinks.map(({ point, angle }) => ({ point, angle })), worst, tremor };
}

/** The stroke without points that all but repeat the one before; its two ends stay. */
function thinned(stroke: readonly Point[]): readonly Point[] {
  const out: Point[] = [];
  for (const p of stroke) if (out.length === 0 || distance(out[out.length - 1]!, p) >= STILL) out.push(p);
  const end = stroke[stroke.length - 1];
  if (end === undefined || end === out[out.length - 1]) return out;
  if (out.length > 1) out[out.length - 1] = end;
  else if (distance(out[0]!, end) > 0) out.push(end);
  return out;
}

/** The fewest cubics for a run without kinks. */
function fitRun(run: readonly Point[], tolerance: number, tremor: number): SplineFit {
  const steps = run.map((p, i) => (i > 0 ? distance(run[i - 1]!, p) : 0));
  const length = steps.reduce((sum, step) => sum + step, 0);
  // A point stands for its part of the way, so that a slow hand weighs no more than a quick one.
  const weights = steps.map((step, i) => (step + (steps[i + 1] ?? 0)) / 2);
  const most = Math.max(1, Math.min(MOST, Math.floor(length / LEAST_SPAN), Math.floor(run.length / 4)));
  const farthest = tolerance + FARTHEST * tremor;
  const drift = tolerance + (FARTHEST * tremor) / Math.sqrt(AVERAGED);
  const fits: SplineFit[] = [];
  const fit = (spans: number): SplineFit => (fits[spans] ??= fitSpline(run, weights, spans));
  for (let spans = 1; spans < most; spans++) {
    const now = fit(spans);
    if (now.worst <= farthest && now.drift <= drift) return now;
    if (now.drift <= SLACK * drift && fit(Math.min(most, spans + 2)).rms > (1 - GAIN) * now.rms) return now;
  }
  return fit(most);
}
