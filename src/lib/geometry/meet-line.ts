import type { Cubic, Line, Point, Segment } from './types.ts';
import { CONTACT, meeting, NEAR, type Meeting } from './contact.ts';
import { sharedStretch } from './overlap.ts';
import { pointAt } from './segment.ts';

/** Where a line and a segment meet, as `intersectSegments` has it; by itself, since what is straight needs no curves to cross. */
export function lineMeetings(s: Line, u: Segment): Meeting[] {
  const found = u.kind === 'line' ? withLine(s, u) : lineCubicMeetings(s, u);
  const out = found ?? sharedEnds(s, u);
  return out.length > 1 ? out.sort((p, q) => p.t - q.t) : out;
}

/** The ends of a stretch in common. */
export function sharedEnds(s: Segment, u: Segment): Meeting[] {
  const o = sharedStretch(s, u);
  if (o === undefined) return [];
  return [
    meeting(o.t0, o.u0, meetingPoint(s, u, o.t0, o.u0), true, true),
    meeting(o.t1, o.u1, meetingPoint(s, u, o.t1, o.u1), true, true),
  ];
}

/** An end point where there is one, so that a meeting at an end keeps its bits. */
function meetingPoint(s: Segment, u: Segment, t: number, at: number): Point {
  if (t === 0) return s.a;
  if (t === 1) return s.d;
  if (at === 0) return u.a;
  if (at === 1) return u.d;
  return pointAt(s, t);
}

/** Line with line; undefined when they run along each other. */
function withLine(s: Line, u: Line): Meeting[] | undefined {
  const ax = s.d.x - s.a.x;
  const ay = s.d.y - s.a.y;
  const bx = u.d.x - u.a.x;
  const by = u.d.y - u.a.y;
  const ox = u.a.x - s.a.x;
  const oy = u.a.y - s.a.y;
  const aa = ax * ax + ay * ay;
  const bb = bx * bx + by * by;
  if (aa === 0 || bb === 0) return pointMeeting(s, u);
  const turn = ax * by - ay * bx;
  const la = Math.sqrt(aa);
  const lb = Math.sqrt(bb);
  if (Math.abs(turn) <= 1e-12 * la * lb) {
    if (Math.abs(ax * oy - ay * ox) > CONTACT * la) return [];
    // On one carrier: where the second starts and ends along the first.
    const t0 = (ax * ox + ay * oy) / aa;
    const t1 = t0 + (ax * bx + ay * by) / aa;
    const near = CONTACT / la;
    const low = Math.max(0, Math.min(t0, t1));
    const high = Math.min(1, Math.max(t0, t1));
    if (high < low - near) return [];
    if ((high - low) * la > 1e-5) return undefined;
    const t = low < 0.5 ? 0 : 1;
    const at = Math.abs(t - t0) < Math.abs(t - t1) ? 0 : 1;
    return [meeting(t, at, t === 0 ? s.a : s.d, true)];
  }
  let t = (ox * by - oy * bx) / turn;
  let at = (ox * ay - oy * ax) / turn;
  // How far along either segment the contact reaches: more when they meet at a slant.
  const reach = (CONTACT * la * lb) / Math.abs(turn);
  if (t < -reach / la || t > 1 + reach / la || at < -reach / lb || at > 1 + reach / lb) return [];
  t = snap(t, CONTACT / la);
  at = snap(at, CONTACT / lb);
  return [meeting(t, at, meetingPoint(s, u, t, at))];
}

function snap(t: number, near: number): number {
  return t <= near ? 0 : t >= 1 - near ? 1 : t;
}

/** When one of two lines is a single point. */
function pointMeeting(s: Line, u: Line): Meeting[] {
  const point = s.a.x === s.d.x && s.a.y === s.d.y;
  const [p, l] = point ? [s.a, u] : [u.a, s];
  const x = l.d.x - l.a.x;
  const y = l.d.y - l.a.y;
  const n = x * x + y * y;
  const raw = n === 0 ? 0 : ((p.x - l.a.x) * x + (p.y - l.a.y) * y) / n;
  const t = snap(raw, n === 0 ? 1 : CONTACT / Math.sqrt(n));
  const dx = l.a.x + t * x - p.x;
  const dy = l.a.y + t * y - p.y;
  if (dx * dx + dy * dy > CONTACT * CONTACT) return [];
  return [point ? meeting(0, t, p) : meeting(t, 0, p)];
}

/**
 * Line with cubic: roots of the cubic's height above the line. The height is cut where it turns (a quadratic), so each part
 * is monotone and holds one root or none; a turn within 1e-9 mm of the line is a touch. Undefined when the cubic is
 * straight and runs along the line.
 */
export function lineCubicMeetings(l: Line, s: Cubic): Meeting[] | undefined {
  const x = l.d.x - l.a.x;
  const y = l.d.y - l.a.y;
  const length = Math.sqrt(x * x + y * y);
  // A line of no length has no direction to measure from; any will do for the one point.
  const nx = length > 0 ? -y / length : 0;
  const ny = length > 0 ? x / length : 1;
  const ha = nx * (s.a.x - l.a.x) + ny * (s.a.y - l.a.y);
  const hb = nx * (s.b.x - l.a.x) + ny * (s.b.y - l.a.y);
  const hc = nx * (s.c.x - l.a.x) + ny * (s.c.y - l.a.y);
  const hd = nx * (s.d.x - l.a.x) + ny * (s.d.y - l.a.y);
  if (ha > CONTACT && hb > CONTACT && hc > CONTACT && hd > CONTACT) return [];
  if (ha < -CONTACT && hb < -CONTACT && hc < -CONTACT && hd < -CONTACT) return [];
  const flat = Math.max(Math.abs(ha), Math.abs(hb), Math.abs(hc), Math.abs(hd)) <= CONTACT;
  if (flat && length > 0) return straightMeetings(l, s, ny, -nx, length);
  const out: Meeting[] = [];
  const p = hd - ha + 3 * (hb - hc);
  const q = 2 * (ha - 2 * hb + hc);
  const r = hb - ha;
  let turns = 0;
  let first = 1;
  let second = 1;
  const square = q * q - 4 * p * r;
  if (square > 0) {
    const h = -0.5 * (q + (q < 0 ? -1 : 1) * Math.sqrt(square));
    const inOrder = h / p < r / h;
    const low = inOrder ? h / p : r / h;
    const high = inOrder ? r / h : h / p;
    if (low > 0 && low < 1) {
      first = low;
      turns = 1;
    }
    if (high > 0 && high < 1) {
      if (turns === 0) first = high;
      else second = high;
      turns += 1;
    }
  }
  const leg0 = Math.abs(s.b.x - s.a.x) + Math.abs(s.b.y - s.a.y);
  const leg1 = Math.abs(s.d.x - s.c.x) + Math.abs(s.d.y - s.c.y);
  const starts = Math.abs(ha) <= CONTACT;
  const ends = Math.abs(hd) <= CONTACT;
  if (starts) meet(out, l, s, length, 0, Math.abs(hb - ha) <= 1e-6 * leg0);
  let t0 = 0;
  let h0 = ha;
  for (let i = 0; i <= turns; i++) {
    const t1 = i === turns ? 1 : i === 0 ? first : second;
    const h1 = t1 === 1 ? hd : height(ha, hb, hc, hd, t1);
    if (Math.abs(h1) > CONTACT) {
      if (Math.abs(h0) > CONTACT && h0 < 0 !== h1 < 0)
        meet(out, l, s, length, rootBetween(ha, hb, hc, hd, t0, t1, h1 > 0), false);
    } else if (t1 === 1) {
      meet(out, l, s, length, 1, Math.abs(hd - hc) <= 1e-6 * leg1);
    } else if (!(starts && t1 * leg0 < NEAR) && !(ends && (1 - t1) * leg1 < NEAR)) {
      // (A turn hard by an end that is met is the contact of that end.)
      meet(out, l, s, length, t1, true);
    }
    t0 = t1;
    h0 = h1;
  }
  return out;
}

/** Notes the meeting of a line of that length with a cubic at parameter `at` of the cubic, if the line reaches so far. */
function meet(out: Meeting[], l: Line, s: Cubic, length: number, at: number, tangent: boolean): void {
  const nx = length > 0 ? -(l.d.y - l.a.y) / length : 0;
  const ny = length > 0 ? (l.d.x - l.a.x) / length : 1;
  const o = at === 0 ? s.a : at === 1 ? s.d : pointAt(s, at);
  const along = ny * (o.x - l.a.x) - nx * (o.y - l.a.y);
  // A touch is spread out along the line, so its place is only known to the root of the tolerance.
  const far = tangent ? 1e-6 : CONTACT;
  if (along < -far || along > length + far) return;
  const t = length > 0 ? snap(along / length, CONTACT / length) : 0;
  out.push(meeting(t, at, meetingPoint(l, s, t, at), tangent ? true : undefined));
}

/** A cubic in Bernstein form at t. */
function height(a: number, b: number, c: number, d: number, t: number): number {
  const v = 1 - t;
  return v * v * (v * a + 3 * t * b) + t * t * (3 * v * c + t * d);
}

/** Its one root between low and high: Newton kept inside a shrinking bracket. */
function rootBetween(
  a: number,
  b: number,
  c: number,
  d: number,
  low: number,
  high: number,
  rising: boolean,
): number {
  const p = d - a + 3 * (b - c);
  const q = 2 * (a - 2 * b + c);
  const r = b - a;
  let lo = low;
  let hi = high;
  let t = 0.5 * (lo + hi);
  for (let round = 0; round < 80; round++) {
    const value = height(a, b, c, d, t);
    if (value === 0) return t;
    if (value > 0 === rising) hi = t;
    else lo = t;
    let next = t - value / (3 * ((p * t + q) * t + r));
    if (!(next >= lo && next <= hi)) next = 0.5 * (lo + hi);
    if (Math.abs(next - t) <= 1e-16 || hi - lo <= 2e-16) return next;
    t = next;
  }
  return t;
}

/** A cubic whose control points all lie on the carrier of the line (unit direction dx, dy). */
function straightMeetings(l: Line, s: Cubic, dx: number, dy: number, length: number): Meeting[] | undefined {
  const at = (p: Point): number => dx * (p.x - l.a.x) + dy * (p.y - l.a.y);
  const a = at(s.a);
  const b = at(s.b);
  const c = at(s.c);
  const d = at(s.d);
  if (Math.max(a, b, c, d) < -CONTACT || Math.min(a, b, c, d) > length + CONTACT) return [];
  // Only the ends touch, unless control points reach past them.
  if (Math.max(a, b, c, d) <= CONTACT) return [meeting(0, a > d ? 0 : 1, l.a, true)];
  if (Math.min(a, b, c, d) >= length - CONTACT) return [meeting(1, a < d ? 0 : 1, l.d, true)];
  return undefined;
}
