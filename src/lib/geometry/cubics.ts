import type { Cubic, Point } from './types.ts';
import { samePoint } from './point.ts';
import { leadsOn, pointAt, reverse } from './segment.ts';
import { CONTACT, meeting, NEAR, type Meeting } from './contact.ts';
import { nearestOnSegment } from './nearest.ts';
import { sharedStretch } from './overlap.ts';
import { apart, clearParts, halves, neverParallel, parts, root, WIDTH } from './parts.ts';

/*
 * Cubic with cubic: halve both until a pair of parts can meet at most once, which is so when no tangent of the one is parallel
 * to a tangent of the other (all outer products of their control legs have one sign), and let Newton find that meeting.
 * Parts whose boxes or fat lines (Sederberg & Nishita, Curve intersection using Bézier clipping, 1990) lie apart are dropped.
 * What stays undecided down to NEAR is a touch, and is solved as one: parallel tangents and no distance. Two curves that are not
 * one but keep within about 1e-5 mm of each other all along take too many parts: their meetings are reported only in part.
 */

/** Undecided parts smaller than NEAR are looked at as a touch; smaller than this they are given up (mm). */
const SMALLEST = 4e-9;
/** Pairs looked at before asking whether the two are one curve, and before giving up. */
const ASK = 300;
const LIMIT = 20000;

let first: Cubic;
let second: Cubic;
let found: Meeting[] = [];
let visits = 0;
let coincident = false;

/** Meetings of two cubics, or undefined when they share a stretch of one curve. */
export function cubicMeetings(s: Cubic, u: Cubic): Meeting[] | undefined {
  if (!hullsMeet(s, u)) return [];
  found = [];
  const meetings = found;
  if (sharesEnds(s, u, meetings)) return meetings;
  if (meetings.length === 2 && sharedStretch(s, u) !== undefined) return undefined;
  first = s;
  second = u;
  clearParts();
  visits = 0;
  coincident = false;
  visit(root(s), root(u));
  found = [];
  return coincident ? undefined : meetings;
}

function hullsMeet(s: Cubic, u: Cubic): boolean {
  return (
    Math.min(s.a.x, s.b.x, s.c.x, s.d.x) <= Math.max(u.a.x, u.b.x, u.c.x, u.d.x) + CONTACT &&
    Math.min(u.a.x, u.b.x, u.c.x, u.d.x) <= Math.max(s.a.x, s.b.x, s.c.x, s.d.x) + CONTACT &&
    Math.min(s.a.y, s.b.y, s.c.y, s.d.y) <= Math.max(u.a.y, u.b.y, u.c.y, u.d.y) + CONTACT &&
    Math.min(u.a.y, u.b.y, u.c.y, u.d.y) <= Math.max(s.a.y, s.b.y, s.c.y, s.d.y) + CONTACT
  );
}

/** Records ends in common; true when nothing else can be in common. */
function sharesEnds(s: Cubic, u: Cubic, out: Meeting[]): boolean {
  let apart = false;
  if (samePoint(s.d, u.a)) {
    out.push(endMeeting(s, u, 1, 0));
    apart = leadsOn(s, u);
  }
  if (samePoint(s.a, u.d)) {
    out.push(endMeeting(s, u, 0, 1));
    apart = leadsOn(u, s);
  }
  if (samePoint(s.d, u.d)) {
    out.push(endMeeting(s, u, 1, 1));
    apart = leadsOn(s, reverse(u));
  }
  if (samePoint(s.a, u.a)) {
    out.push(endMeeting(s, u, 0, 0));
    apart = leadsOn(reverse(s), u);
  }
  return apart && out.length === 1;
}

function endMeeting(s: Cubic, u: Cubic, t: number, at: number): Meeting {
  const p = leg(s, t);
  const q = leg(u, at);
  const turn = p.x * q.y - p.y * q.x;
  const size = Math.sqrt((p.x * p.x + p.y * p.y) * (q.x * q.x + q.y * q.y));
  const point = t === 0 ? s.a : s.d;
  return meeting(t, at, point, Math.abs(turn) <= 1e-6 * size ? true : undefined);
}

/** The direction at an end, looking past control points that lie on it. */
function leg(s: Cubic, t: number): Point {
  const o = t === 0 ? s.a : s.d;
  for (const q of t === 0 ? [s.b, s.c, s.d] : [s.c, s.b, s.a]) {
    if (!samePoint(q, o)) return { x: q.x - o.x, y: q.y - o.y };
  }
  return { x: 0, y: 0 };
}

function visit(i: number, j: number): void {
  if (++visits > LIMIT || coincident) return;
  if (visits === ASK && sharedStretch(first, second) !== undefined) {
    coincident = true;
    return;
  }
  const v = parts.values;
  const a = i * WIDTH;
  const b = j * WIDTH;
  if (apart(a, b)) return;
  const sizeA = Math.max(v[a + 12]! - v[a + 10]!, v[a + 13]! - v[a + 11]!);
  const sizeB = Math.max(v[b + 12]! - v[b + 10]!, v[b + 13]! - v[b + 11]!);
  const size = Math.max(sizeA, sizeB);
  if (neverParallel(a, b) && crossing(a, b)) return;
  if (size < NEAR && (known(a, b) || together(a, b) || touchIn(a, b))) return;
  if (size < SMALLEST) {
    // Seen from the second where the first is too coarse: it may be a single point.
    const u = 0.5 * (v[b + 8]! + v[b + 9]!);
    if (!together(a, b)) record(nearestOnSegment(first, pointAt(second, u)).t, u, true);
    return;
  }
  if (sizeA >= sizeB) {
    const k = halves(i);
    visit(k, j);
    visit(k + 1, j);
  } else {
    const k = halves(j);
    visit(i, k);
    visit(i, k + 1);
  }
}

// Point, first and second derivative at a parameter. An array, because engines box numbers kept in module variables.
const at = new Float64Array(6);

function evaluate(s: Cubic, t: number): void {
  const r = 1 - t;
  const { a, b, c, d } = s;
  const abx = r * a.x + t * b.x;
  const aby = r * a.y + t * b.y;
  const bcx = r * b.x + t * c.x;
  const bcy = r * b.y + t * c.y;
  const cdx = r * c.x + t * d.x;
  const cdy = r * c.y + t * d.y;
  const lx = r * abx + t * bcx;
  const ly = r * aby + t * bcy;
  const hx = r * bcx + t * cdx;
  const hy = r * bcy + t * cdy;
  at[0] = r * lx + t * hx;
  at[1] = r * ly + t * hy;
  at[2] = 3 * (hx - lx);
  at[3] = 3 * (hy - ly);
  at[4] = 6 * (abx - 2 * bcx + cdx);
  at[5] = 6 * (aby - 2 * bcy + cdy);
}

/** Newton for the one meeting two parts can have; false when it is not found in them. */
function crossing(a: number, b: number): boolean {
  const v = parts.values;
  const t0 = v[a + 8]!;
  const t1 = v[a + 9]!;
  const u0 = v[b + 8]!;
  const u1 = v[b + 9]!;
  // Start where the chords cross.
  const ex = v[a + 6]! - v[a]!;
  const ey = v[a + 7]! - v[a + 1]!;
  const fx = v[b + 6]! - v[b]!;
  const fy = v[b + 7]! - v[b + 1]!;
  const ox = v[b]! - v[a]!;
  const oy = v[b + 1]! - v[a + 1]!;
  const turn = ex * fy - ey * fx;
  const alpha = (ox * fy - oy * fx) / turn;
  const beta = (ox * ey - oy * ex) / turn;
  if (!(alpha > -0.5 && alpha < 1.5 && beta > -0.5 && beta < 1.5)) return false;
  let t = t0 + (t1 - t0) * Math.min(1, Math.max(0, alpha));
  let u = u0 + (u1 - u0) * Math.min(1, Math.max(0, beta));
  const slackT = 0.5 * (t1 - t0);
  const slackU = 0.5 * (u1 - u0);
  for (let round = 0; round < 12; round++) {
    evaluate(first, t);
    const px = at[0]!;
    const py = at[1]!;
    const dx = at[2]!;
    const dy = at[3]!;
    evaluate(second, u);
    const gx = px - at[0]!;
    const gy = py - at[1]!;
    const det = dx * at[3]! - dy * at[2]!;
    if (det === 0) return false;
    const stepT = (gx * at[3]! - gy * at[2]!) / det;
    const stepU = (gx * dy - gy * dx) / det;
    t -= stepT;
    u -= stepU;
    if (!(t > t0 - slackT && t < t1 + slackT && u > u0 - slackU && u < u1 + slackU)) return false;
    // Quadratic convergence: after a step this small the next is below rounding.
    if (Math.abs(stepT) < 1e-9 && Math.abs(stepU) < 1e-9) {
      if (!(t > t0 - 1e-9 && t < t1 + 1e-9 && u > u0 - 1e-9 && u < u1 + 1e-9)) return false;
      // Hardly an angle: a touch that rounding has opened is still a touch.
      const slant =
        Math.abs(det) < 1e-4 * Math.sqrt((dx * dx + dy * dy) * (at[2]! * at[2]! + at[3]! * at[3]!));
      return (slant && touch(t, u, 1e-4, 1e-4)) || record(t, u, false);
    }
  }
  return false;
}

function touchIn(a: number, b: number): boolean {
  const v = parts.values;
  const wideT = v[a + 9]! - v[a + 8]!;
  const wideU = v[b + 9]! - v[b + 8]!;
  return touch(v[a + 8]! + 0.5 * wideT, v[b + 8]! + 0.5 * wideU, 4 * wideT, 4 * wideU);
}

/** Newton for parallel tangents at the nearest, no farther than `reach`; true when the curves touch there. */
function touch(startT: number, startU: number, reachT: number, reachU: number): boolean {
  let t = startT;
  let u = startU;
  for (let round = 0; round < 12; round++) {
    evaluate(first, t);
    const px = at[0]!;
    const py = at[1]!;
    const dx = at[2]!;
    const dy = at[3]!;
    const ex = at[4]!;
    const ey = at[5]!;
    evaluate(second, u);
    const gx = px - at[0]!;
    const gy = py - at[1]!;
    const g = gx * dx + gy * dy;
    const h = dx * at[3]! - dy * at[2]!;
    const gt = dx * dx + dy * dy + gx * ex + gy * ey;
    const gu = -(at[2]! * dx + at[3]! * dy);
    const ht = ex * at[3]! - ey * at[2]!;
    const hu = dx * at[5]! - dy * at[4]!;
    const det = gt * hu - gu * ht;
    if (det === 0) return false;
    const stepT = (g * hu - gu * h) / det;
    const stepU = (gt * h - g * ht) / det;
    t -= stepT;
    u -= stepU;
    if (!(Math.abs(t - startT) <= reachT && Math.abs(u - startU) <= reachU)) return false;
    if (Math.abs(stepT) < 1e-9 && Math.abs(stepU) < 1e-9) return record(t, u, true);
  }
  return false;
}

/** Whether the curves are in contact in the middle of part a, which Newton need not settle: the tangents hardly part there. */
function together(a: number, b: number): boolean {
  const t = 0.5 * (parts.values[a + 8]! + parts.values[a + 9]!);
  const { t: u } = nearestOnSegment(second, pointAt(first, t));
  const u0 = parts.values[b + 8]!;
  const u1 = parts.values[b + 9]!;
  const wide = u1 - u0;
  return u >= u0 - wide && u <= u1 + wide && record(t, u, true);
}

/** Whether the curves stay in contact from a touch found before to the next: then it is one touch. */
function oneTouch(m: Meeting, t: number): boolean {
  for (const f of [0.25, 0.5, 0.75]) {
    if (nearestOnSegment(second, pointAt(first, m.t + (t - m.t) * f)).distance > CONTACT) return false;
  }
  return true;
}

/** Whether a meeting found before lies in both parts (or hard by them). */
function known(a: number, b: number): boolean {
  const v = parts.values;
  for (const m of found) {
    const wideT = v[a + 9]! - v[a + 8]!;
    const wideU = v[b + 9]! - v[b + 8]!;
    if (
      m.t >= v[a + 8]! - wideT &&
      m.t <= v[a + 9]! + wideT &&
      m.u >= v[b + 8]! - wideU &&
      m.u <= v[b + 9]! + wideU
    )
      return true;
  }
  return false;
}

/** Adds a meeting, snapped to ends that lie within CONTACT; false when the two points are not together after all. */
function record(t: number, u: number, tangent: boolean): boolean {
  t = atEnd(first, t);
  u = atEnd(second, u);
  const p = pointAt(first, t);
  const q = pointAt(second, u);
  const x = p.x - q.x;
  const y = p.y - q.y;
  if (x * x + y * y > CONTACT * CONTACT) return false;
  const near = tangent ? NEAR : 1e-6;
  for (const m of found) {
    if (
      Math.abs(m.point.x - p.x) < near &&
      Math.abs(m.point.y - p.y) < near &&
      Math.abs(m.t - t) < 1e-3 &&
      Math.abs(m.u - u) < 1e-3
    )
      return true;
    if (tangent && m.tangent === true && oneTouch(m, t)) return true;
  }
  const point = t !== 0 && t !== 1 && (u === 0 || u === 1) ? q : p;
  found.push(meeting(t, u, point, tangent ? true : undefined));
  return true;
}

function atEnd(s: Cubic, t: number): number {
  if (t <= 0) return 0;
  if (t >= 1) return 1;
  if (t > 1e-3 && t < 0.999) return t;
  const p = pointAt(s, t);
  const e = t < 0.5 ? s.a : s.d;
  const x = p.x - e.x;
  const y = p.y - e.y;
  return x * x + y * y <= CONTACT * CONTACT ? (t < 0.5 ? 0 : 1) : t;
}
