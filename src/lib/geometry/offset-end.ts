import type { Point, Segment } from './types.ts';
import type { OffsetNote } from './offset-types.ts';
import type { Run } from './offset-edge.ts';
import type { Cut } from './offset-crossing.ts';
import { line } from './segment.ts';

/** How two runs are joined: where each is cut (undefined: at its own end) and what lies between. */
export interface Joint {
  readonly before?: Cut | undefined;
  readonly after?: Cut | undefined;
  readonly path: readonly Segment[];
  readonly note?: OffsetNote['kind'] | undefined;
}

/** One run's end at a corner. `away` points off the end along its tangent, `n` outwards. */
export interface End {
  readonly run: Run;
  readonly last: boolean;
  readonly p: Point;
  readonly away: Point;
  readonly n: Point;
  readonly w: number;
}

/** The point k·v on from p. */
export const along = (p: Point, v: Point, k: number): Point => ({ x: p.x + v.x * k, y: p.y + v.y * k });

/** The end of a run (`last`), or its start. */
export function endOf(run: Run, last: boolean): End {
  const t = last ? run.arriving : run.leaving;
  const segments = run.segments;
  return {
    run,
    last,
    p: last ? segments[segments.length - 1]!.d : segments[0]!.a,
    away: last ? t : { x: -t.x, y: -t.y },
    n: { x: t.y, y: -t.x },
    w: run.width,
  };
}

/** The turn at a corner: sine and cosine (sine > 0: an outward corner), and tan of half the turn. */
export interface Turn {
  readonly seam: Point;
  readonly sin: number;
  readonly cos: number;
  readonly half: number;
}

/** Adds the line from a to d, unless it has no length. */
export function pushLine(path: Segment[], a: Point, d: Point): void {
  if (a.x !== d.x || a.y !== d.y) path.push(line(a, d));
}

/** Cuts or lengthens a straight run so that it ends at x, `s` mm past its end. */
export function stretched(e: End, s: number, x: Point): Cut {
  const { a, d } = e.run.segments[0]!;
  const length = Math.sqrt((d.x - a.x) * (d.x - a.x) + (d.y - a.y) * (d.y - a.y));
  return { segment: 0, t: e.last ? 1 + s / length : -s / length, point: x };
}

/** A length past an end that is only rounding is none, so that a right angle is one on every side of rounding. */
export const settled = (s: number): number => (Math.abs(s) < 1e-10 ? 0 : s);

/** Whether a cut lies on its run, not past it. */
export const within = (c: Cut): boolean => c.t >= 0 && c.t <= 1;

/** Brings an end out to x, `s` ≥ 0 mm past it: a straight run runs on, a curve gets a straight piece along its tangent. */
export function reach(e: End, s: number, x: Point, out: Segment[]): Cut | undefined {
  if (e.run.straight) return stretched(e, s, x);
  if (e.last) pushLine(out, e.p, x);
  else pushLine(out, x, e.p);
  return undefined;
}
