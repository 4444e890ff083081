import type { Point, Segment } from './types.ts';
import { between } from './segment.ts';
import { signedArea } from './outline.ts';
import { shortSort } from './short-sort.ts';
import { withEnds } from './offset-crossing.ts';
import { crossings, type Crossing, type Piece } from './offset-tangles.ts';

/** Where two stretches of the raw cut line were joined across a crossing. */
export interface Bridge {
  readonly from: number;
  readonly to: number;
  readonly at: Point;
}

export interface Untangled {
  readonly pieces: readonly Piece[];
  readonly bridges: readonly Bridge[];
}

/** One pass of a crossing: on which piece and where, of which crossing, and the number of its other pass. */
interface Pass {
  readonly piece: number;
  readonly t: number;
  readonly crossing: number;
  other: number;
}

const inOrder = (a: Pass, b: Pass): number => a.piece - b.piece || a.t - b.t || a.crossing - b.crossing;

/**
 * A closed line without crossings: at every crossing the two strands are switched, each keeping its direction, and of the
 * loops this makes the one with the largest area is kept (the same outline as the union of all that is wound round at
 * least once). The pieces come back as given when nothing crosses.
 */
export function untangle(pieces: readonly Piece[]): Untangled {
  const found = crossings(pieces);
  if (found.length === 0) return { pieces, bridges: [] };
  // Each crossing is passed twice; both passes in order along the line.
  const events: Pass[] = [];
  for (let k = 0; k < found.length; k++) {
    const c = found[k]!;
    events.push({ piece: c.i, t: c.t, crossing: k, other: 0 });
    events.push({ piece: c.j, t: c.u, crossing: k, other: 0 });
  }
  shortSort(events, inOrder);
  const first = new Array<number>(found.length).fill(-1);
  for (let e = 0; e < events.length; e++) {
    const k = events[e]!.crossing;
    if (first[k]! < 0) first[k] = e;
    else {
      events[e]!.other = first[k]!;
      events[first[k]!]!.other = e;
    }
  }
  // Arc e runs from event e to the next one.
  const count = events.length;
  const arcs: Piece[][] = [];
  for (let e = 0; e < count; e++) arcs.push(arcBetween(pieces, events[e]!, events[(e + 1) % count]!, found));
  const seen = new Array<boolean>(count).fill(false);
  let best: number[] = [];
  let most = -Infinity;
  for (let e = 0; e < count; e++) {
    if (seen[e]) continue;
    const loop: number[] = [];
    for (let k = e; !seen[k]; k = events[(k + 1) % count]!.other) {
      seen[k] = true;
      loop.push(k);
    }
    const around: Segment[] = [];
    for (const k of loop) for (const piece of arcs[k]!) around.push(piece.segment);
    const area = signedArea(around);
    if (area > most) {
      most = area;
      best = loop;
    }
  }
  return bridged(best.map((k) => arcs[k]!));
}

/** Pieces shorter than this, left where lines lie on each other, are dropped (mm). */
const SLIVER = 1e-6;

/** The arcs of the kept loop end to end, and where they were joined. */
function bridged(arcs: readonly (readonly Piece[])[]): Untangled {
  const out: Piece[] = [];
  const starts: number[] = [];
  for (const arc of arcs) {
    starts.push(out.length);
    for (const p of arc) {
      const { a, d } = p.segment;
      if (Math.abs(a.x - d.x) + Math.abs(a.y - d.y) > SLIVER) {
        const end = out.length > 0 ? out[out.length - 1]!.segment.d : a;
        out.push(end === a ? p : moved(p, end, d));
      }
    }
  }
  const n = out.length;
  const last = out[n - 1]!;
  if (last.segment.d !== out[0]!.segment.a) out[n - 1] = moved(last, last.segment.a, out[0]!.segment.a);
  const bridges: Bridge[] = [];
  for (const k of starts) {
    const next = out[k % n]!;
    const bridge = { from: out[(k + n - 1) % n]!.tag, to: next.tag, at: next.segment.a };
    if (!bridges.some((b) => b.at === bridge.at)) bridges.push(bridge);
  }
  return { pieces: out, bridges };
}

/** The pieces from one pass to the next along the line, the ends exactly on the crossings. */
function arcBetween(pieces: readonly Piece[], from: Pass, to: Pass, found: readonly Crossing[]): Piece[] {
  const out: Piece[] = [];
  const start = found[from.crossing]!.point;
  const end = found[to.crossing]!.point;
  const n = pieces.length;
  // The same piece again, but further back, means once round the whole line.
  let span = to.piece - from.piece;
  if (span < 0 || (span === 0 && (to.t < from.t || from === to))) span += n;
  for (let k = 0; k <= span; k++) {
    const p = pieces[(from.piece + k) % n]!;
    const t0 = k === 0 ? from.t : 0;
    const t1 = k === span ? to.t : 1;
    const a = k === 0 ? start : p.segment.a;
    const d = k === span ? end : p.segment.d;
    if (a.x === d.x && a.y === d.y && (k === 0 || k === span)) continue;
    if (!(t1 > t0)) {
      if (span > 0 || a === d) {
        // A sliver shorter than rounding: carry its end over to what follows or precedes.
        if (out.length > 0)
          out[out.length - 1] = moved(out[out.length - 1]!, out[out.length - 1]!.segment.a, d);
        continue;
      }
      continue;
    }
    const cut = between(p.segment, t0, t1);
    const last = out[out.length - 1];
    out.push({ segment: withEnds(cut, last ? last.segment.d : start, d), tag: p.tag, smooth: p.smooth });
  }
  const last = out[out.length - 1];
  if (last && last.segment.d !== end) out[out.length - 1] = moved(last, last.segment.a, end);
  return out;
}

const moved = (p: Piece, a: Point, d: Point): Piece => ({
  segment: withEnds(p.segment, a, d),
  tag: p.tag,
  smooth: p.smooth,
});
