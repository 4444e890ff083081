import type { Point, Segment } from './types.ts';
import { pointAt } from './segment.ts';
import { bitsCross, clearBits, flatten } from './offset-bits.ts';
import { settle } from './offset-crossing.ts';

/** A segment of the raw cut line and where it comes from: 2·edge, or 2·edge + 1 for the corner after that edge. */
export interface Piece {
  readonly segment: Segment;
  readonly tag: number;
  /** Joined smoothly to the piece before it, so that the two cannot cross. */
  readonly smooth: boolean;
}

/** Where pieces i and j (i < j) cross: parameter t on the one, u on the other. */
export interface Crossing {
  readonly i: number;
  readonly j: number;
  readonly t: number;
  readonly u: number;
  readonly point: Point;
}

/** Room added to the boxes, so that lines which only touch are looked at too (mm). */
const MARGIN = 1e-6;

// Boxes of the pieces; used within one search only. It never shrinks.
let boxes = new Float64Array(256);

/** All crossings of pieces that are not smooth neighbours. */
export function crossings(pieces: readonly Piece[]): Crossing[] {
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
