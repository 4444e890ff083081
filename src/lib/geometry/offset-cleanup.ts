import type { Point, Segment } from './types.ts';
import { between, pointAt } from './segment.ts';
import { signedArea } from './outline.ts';
import { shortSort } from './short-sort.ts';
import { bitsCross, clearBits, flatten } from './offset-bits.ts';
import { settle, withEnds } from './offset-crossing.ts';

/** A segment of the raw cut line and where it comes from: 2·edge, or 2·edge + 1 for the corner after that edge. */
export interface Piece {
  readonly segment: Segment;
  readonly tag: number;
  /** Joined smoothly to the piece before it, so that the two cannot cross. */
  readonly smooth: boolean;
}

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

interface Crossing {
  readonly i: number;
  readonly j: number;
  readonly t: number;
  readonly u: number;
  readonly point: Point;
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

/** Room added to the boxes, so that lines which only touch are looked at too (mm). */
const MARGIN = 1e-6;

// Boxes of the pieces; used within one search only. It never shrinks.
let boxes = new Float64Array(256);

/** All crossings of pieces that are not smooth neighbours. */
function crossings(pieces: readonly Piece[]): Crossing[] {
  const n = pieces.length;
  if (boxes.length < 4 * n) boxes = new Float64Array(8 * n);
  const box = boxes;
  for (let i = 0; i < n; i++) {
    const s = pieces[i]!.segment;
    const { a, d } = s;
    let loX = a.x < d.x ? a.x : d.x;
    let loY = a.y < d.y ? a.y : d.y;
    let hiX = a.x < d.x ? d.x : a.x;
    let hiY = a.y < d.y ? d.y : a.y;
    if (s.kind === 'cubic') {
      const { b, c } = s;
      loX = Math.min(loX, b.x, c.x);
      loY = Math.min(loY, b.y, c.y);
      hiX = Math.max(hiX, b.x, c.x);
      hiY = Math.max(hiY, b.y, c.y);
    }
    box[4 * i] = loX - MARGIN;
    box[4 * i + 1] = loY - MARGIN;
    box[4 * i + 2] = hiX + MARGIN;
    box[4 * i + 3] = hiY + MARGIN;
  }
  const out: Crossing[] = [];
  let nudged: readonly Point[] | undefined;
  // Offset of each piece's bits, −1 until they are asked for.
  let flat: Int32Array | undefined;
  for (let i = 0; i < n; i++) {
    const loX = box[4 * i]!;
    const loY = box[4 * i + 1]!;
    const hiX = box[4 * i + 2]!;
    const hiY = box[4 * i + 3]!;
    for (let j = i + 1; j < n; j++) {
      if (box[4 * j]! > hiX || box[4 * j + 2]! < loX || box[4 * j + 1]! > hiY || box[4 * j + 3]! < loY)
        continue;
      const s = pieces[i]!.segment;
      const u = pieces[j]!.segment;
      const follows = j === i + 1;
      const closes = i === 0 && j === n - 1;
      if (follows || closes) {
        if ((follows && pieces[j]!.smooth) || (closes && pieces[i]!.smooth)) continue;
        if (s.kind === 'line' && u.kind === 'line') continue;
      }
      if (follows ? parted(s, u, s.d) : closes ? parted(u, s, u.d) : apart(s, u)) continue;
      if (!nudged || !flat) {
        nudged = nudge(pieces);
        flat = new Int32Array(n).fill(-1);
        clearBits();
      }
      if (flat[i]! < 0) flat[i] = flatten(s, nudged[i]!, nudged[(i + 1) % n]!);
      if (flat[j]! < 0) flat[j] = flatten(u, nudged[j]!, nudged[(j + 1) % n]!);
      const hits = bitsCross(flat[i]!, flat[j]!, follows, closes);
      for (let k = 0; k < hits.length; k += 2) {
        const exact = settle(s, u, hits[k]!, hits[k + 1]!);
        const t = exact ? exact.t : hits[k]!;
        out.push({ i, j, t, u: exact ? exact.v : hits[k + 1]!, point: pointAt(s, t) });
      }
    }
  }
  return out;
}

/** Whether a line parted the two: square to what joins their middles, or along a chord. Only "yes" is certain. */
function apart(s: Segment, u: Segment): boolean {
  const sx = s.d.x - s.a.x;
  const sy = s.d.y - s.a.y;
  const ux = u.d.x - u.a.x;
  const uy = u.d.y - u.a.y;
  return (
    gap(s, u, -sy, sx) ||
    gap(s, u, -uy, ux) ||
    (s.kind === 'cubic' &&
      u.kind === 'cubic' &&
      gap(s, u, 2 * (u.a.x - s.a.x) + ux - sx, 2 * (u.a.y - s.a.y) + uy - sy))
  );
}

/** Whether the control points of the two lie apart along the direction (x, y), by more than the nudge. */
function gap(s: Segment, u: Segment, x: number, y: number): boolean {
  const a = s.a.x * x + s.a.y * y;
  const d = s.d.x * x + s.d.y * y;
  let low = a < d ? a : d;
  let high = a < d ? d : a;
  if (s.kind === 'cubic') {
    const b = s.b.x * x + s.b.y * y;
    const c = s.c.x * x + s.c.y * y;
    low = Math.min(low, b, c);
    high = Math.max(high, b, c);
  }
  const e = u.a.x * x + u.a.y * y;
  const h = u.d.x * x + u.d.y * y;
  let low2 = e < h ? e : h;
  let high2 = e < h ? h : e;
  if (u.kind === 'cubic') {
    const f = u.b.x * x + u.b.y * y;
    const g = u.c.x * x + u.c.y * y;
    low2 = Math.min(low2, f, g);
    high2 = Math.max(high2, f, g);
  }
  const room = MARGIN * (Math.abs(x) + Math.abs(y));
  return high + room < low2 || high2 + room < low;
}

const ahead = (q: Point, p: Point, x: number, y: number): number => (q.x - p.x) * x + (q.y - p.y) * y;

/** Whether u leaves the end p of s with all its control points on one side of a line through p, those of s on the other. */
function parted(s: Segment, u: Segment, p: Point): boolean {
  const ax = p.x - s.a.x;
  const ay = p.y - s.a.y;
  const dx = u.d.x - p.x;
  const dy = u.d.y - p.y;
  const a = Math.sqrt(ax * ax + ay * ay);
  const d = Math.sqrt(dx * dx + dy * dy);
  const x = ax * d + dx * a;
  const y = ay * d + dy * a;
  const room = MARGIN * (Math.abs(x) + Math.abs(y));
  if (ahead(s.a, p, x, y) > -room || ahead(u.d, p, x, y) < room) return false;
  if (s.kind === 'cubic' && (ahead(s.b, p, x, y) > -room || ahead(s.c, p, x, y) > -room)) return false;
  return u.kind === 'line' || (ahead(u.b, p, x, y) >= room && ahead(u.c, p, x, y) >= room);
}

/**
 * Joints moved outwards by some tenths of a micron, each a little differently. Only decisions are made on these points:
 * lines that lie on each other (two allowances that just meet, parts of one straight line) are thus always told to cross,
 * and in a consistent way.
 */
function nudge(pieces: readonly Piece[]): Point[] {
  const n = pieces.length;
  const out: Point[] = [];
  for (let i = 0; i < n; i++) {
    const s = pieces[i]!.segment;
    const r = pieces[(i + n - 1) % n]!.segment;
    const p = direction(r, true);
    const q = direction(s, false);
    const spread = i * 0.6180339887498949;
    const k = NUDGE * (1 + spread - Math.floor(spread));
    out.push({ x: s.a.x + k * (p.y + q.y), y: s.a.y - k * (p.x + q.x) });
  }
  return out;
}

const NUDGE = 1e-7;

/** Rough unit direction at an end of a segment. */
function direction(s: Segment, atEnd: boolean): Point {
  let x: number;
  let y: number;
  if (s.kind === 'cubic' && atEnd) {
    x = s.d.x - s.c.x;
    y = s.d.y - s.c.y;
  } else if (s.kind === 'cubic') {
    x = s.b.x - s.a.x;
    y = s.b.y - s.a.y;
  } else {
    x = s.d.x - s.a.x;
    y = s.d.y - s.a.y;
  }
  const n = Math.sqrt(x * x + y * y);
  return n > 0 ? { x: x / n, y: y / n } : { x: 0, y: 0 };
}
