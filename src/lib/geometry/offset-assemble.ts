import type { Segment } from './types.ts';
import type { Run } from './offset-edge.ts';
import type { Joint } from './offset-end.ts';
import type { Piece } from './offset-tangles.ts';
import { withEnds } from './offset-crossing.ts';
import { lerp } from './point.ts';
import { between } from './segment.ts';

/** Lines shorter than this come from rounding and are left out (mm). */
const NO_LENGTH = 1e-9;

/** Adds a segment that starts exactly where the last one ends. */
function append(out: Piece[], segment: Segment, tag: number, smooth: boolean): void {
  const end = out.length > 0 ? out[out.length - 1]!.segment.d : segment.a;
  const s = withEnds(segment, end, segment.d);
  if (s.kind === 'cubic' || Math.abs(s.a.x - s.d.x) + Math.abs(s.a.y - s.d.y) > NO_LENGTH) {
    out.push({ segment: s, tag, smooth });
  }
}

/** The raw cut line: every run cut to its joints, and the joints' own parts. */
export function assemble(runs: readonly Run[], joints: readonly Joint[]): Piece[] {
  const out: Piece[] = [];
  const n = runs.length;
  for (let i = 0; i < n; i++) {
    const run = runs[i]!;
    const from = joints[(i + n - 1) % n]!;
    const to = joints[i]!;
    const start = from.after;
    const stop = to.before;
    const tag = 2 * run.edge;
    const last = run.segments.length - 1;
    // After a straight continuation of a curve, or a snapped joint, nothing can cross.
    if (run.straight) {
      const s = run.segments[0]!;
      append(out, { kind: 'line', a: start ? start.point : s.a, d: stop ? stop.point : s.d }, tag, false);
    } else {
      const i0 = start ? start.segment : 0;
      const i1 = stop ? stop.segment : last;
      for (let k = i0; k <= i1; k++) {
        let s = run.segments[k]!;
        const t0 = start && k === i0 ? start.t : 0;
        const t1 = stop && k === i1 ? stop.t : 1;
        if (t0 !== 0 || t1 !== 1) s = between(s, t0, t1);
        if (start && k === i0) s = withEnds(s, start.point, s.d);
        if (stop && k === i1) s = withEnds(s, s.a, stop.point);
        append(out, s, tag, k > i0 || (from.path.length === 0 && !!start && start.t === 0));
      }
    }
    for (const s of to.path) append(out, s, run.corner ? tag + 1 : tag, false);
  }
  // Close it exactly.
  const final = out[out.length - 1]!;
  if (final.segment.d !== out[0]!.segment.a) {
    const closing = withEnds(final.segment, final.segment.a, out[0]!.segment.a);
    out[out.length - 1] = { segment: closing, tag: final.tag, smooth: final.smooth };
  }
  smoothTurnBacks(out);
  return out;
}

/** Stretches between two cusps that run back no farther than this are smoothed over (mm); off the parallel by far less. */
const TURN_BACK = 0.07;

function short({ segment: { a, d } }: Piece): boolean {
  return (a.x - d.x) * (a.x - d.x) + (a.y - d.y) * (a.y - d.y) < TURN_BACK * TURN_BACK;
}

function smoothTurnBacks(pieces: Piece[]): void {
  // None may lie across the start of the list.
  for (let k = 0; k < pieces.length && (short(pieces[0]!) || short(pieces[pieces.length - 1]!)); k++) {
    pieces.unshift(pieces.pop()!);
  }
  for (let k = 1; k + 1 < pieces.length; k++) {
    const { kind, a, d } = pieces[k]!.segment;
    const s = pieces[k - 1]!.segment;
    if (kind === 'line' || s.kind === 'line' || !short(pieces[k]!)) continue;
    // Against the way the curve before it runs (from its far handle on, as the near one vanishes at a cusp).
    if ((d.x - a.x) * (s.d.x - s.b.x) + (d.y - a.y) * (s.d.y - s.b.y) >= 0) continue;
    let from = k - 1;
    let to = k + 1;
    while (from > 0 && short(pieces[from]!)) from--;
    while (to + 1 < pieces.length && short(pieces[to]!)) to++;
    const before = pieces[from]!;
    const after = pieces[to]!;
    if (before.segment.kind === 'line' || after.segment.kind === 'line') continue;
    const middle = lerp(before.segment.d, after.segment.a, 0.5);
    pieces.splice(
      from,
      to - from + 1,
      { ...before, segment: withEnds(before.segment, before.segment.a, middle) },
      { ...after, segment: withEnds(after.segment, middle, after.segment.d), smooth: true },
    );
    k = from;
  }
}
