import type { Point, Segment } from './types.ts';
import { MITRE_LIMIT } from './offset-types.ts';
import type { CornerForm, OffsetNote } from './offset-types.ts';
import type { Run } from './offset-edge.ts';
import type { Cut } from './offset-crossing.ts';
import { curvesMeet, inwards, lineMeets, withEnds } from './offset-crossing.ts';
import { between, line, reverse, transform } from './segment.ts';
import { reflectionAcross } from './isometry.ts';

/** How two runs are joined: where each is cut (undefined: at its own end) and what lies between. */
export interface Joint {
  readonly before?: Cut | undefined;
  readonly after?: Cut | undefined;
  readonly path: readonly Segment[];
  readonly note?: OffsetNote['kind'] | undefined;
  /** Joined through the seam corner, to be untangled by the clean-up. */
  readonly raw?: boolean;
}

/** One run's end at a corner. `away` points off the end along its tangent, `n` outwards. */
interface End {
  readonly run: Run;
  readonly last: boolean;
  readonly p: Point;
  readonly away: Point;
  readonly n: Point;
  readonly w: number;
}

/** Parallels that miss each other by less than this at an all but smooth joint are simply drawn together (mm). */
const SNAP = 1e-3;

const along = (p: Point, v: Point, k: number): Point => ({ x: p.x + v.x * k, y: p.y + v.y * k });

function endOf(run: Run, last: boolean): End {
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
interface Turn {
  readonly seam: Point;
  readonly sin: number;
  readonly cos: number;
  readonly half: number;
}

/** Joins the parallel of `a` to that of `b`, which follows it, at the seam corner between them. */
export function join(a: Run, b: Run, form: CornerForm): Joint {
  const before = endOf(a, true);
  const after = endOf(b, false);
  const t = a.arriving;
  const u = b.leaving;
  const sin = t.x * u.y - t.y * u.x;
  const cos = t.x * u.x + t.y * u.y;
  // For a turn back on itself tan(θ/2) is without bound; so large a number does the same.
  const half = 1 + cos > 1e-12 ? sin / (1 + cos) : sin >= 0 ? 1e6 : -1e6;
  const turn: Turn = { seam: a.to, sin, cos, half };
  if (form.kind === 'step') {
    const made = step(before, after, turn);
    if (made) return made;
  } else if (form.kind !== 'mitre' && sin > 0) {
    const firstBefore = form.first === 'before';
    const made = pressedEnd(
      firstBefore ? before : after,
      firstBefore ? after : before,
      turn,
      form.kind === 'reflect',
    );
    if (made) return firstBefore ? made : turnedRound(made);
    const joint = mitre(before, after, turn);
    const straight = cos > 0 && sin < NEAR_STRAIGHT;
    return joint.note || straight ? joint : { ...joint, note: 'mitred' };
  }
  return mitre(before, after, turn);
}

/** Sine of 10 degrees: where edges meet straighter than this a square or reflected end has no meaning. */
const NEAR_STRAIGHT = 0.17364817766693033;

/** The joint through the seam corner: always right once untangled, whatever the shapes. */
export function throughCorner(a: Run, b: Run, note?: OffsetNote['kind']): Joint {
  const p = endOf(a, true).p;
  const q = endOf(b, false).p;
  const path: Segment[] = [];
  pushLine(path, p, a.to);
  pushLine(path, path.length > 0 ? a.to : p, q);
  return { path, note, raw: true };
}

function pushLine(path: Segment[], a: Point, d: Point): void {
  if (a.x !== d.x || a.y !== d.y) path.push(line(a, d));
}

/** Cuts or lengthens a straight run so that it ends at x, `s` mm past its end. */
function stretched(e: End, s: number, x: Point): Cut {
  const { a, d } = e.run.segments[0]!;
  const length = Math.sqrt((d.x - a.x) * (d.x - a.x) + (d.y - a.y) * (d.y - a.y));
  return { segment: 0, t: e.last ? 1 + s / length : -s / length, point: x };
}

/** A length past an end that is only rounding is none, so that a right angle is one on every side of rounding. */
const settled = (s: number): number => (Math.abs(s) < 1e-10 ? 0 : s);

const within = (c: Cut): boolean => c.t >= 0 && c.t <= 1;

/** Brings an end out to x, `s` ≥ 0 mm past it: a straight run runs on, a curve gets a straight piece along its tangent. */
function reach(e: End, s: number, x: Point, out: Segment[]): Cut | undefined {
  if (e.run.straight) return stretched(e, s, x);
  if (e.last) pushLine(out, e.p, x);
  else pushLine(out, x, e.p);
  return undefined;
}

/** Keeps corners of round numbers off the border of the step rule, so that rounding does not decide. */
const JUST_OVER = 1 + 1e-9;

/**
 * Cut line ends with w_a on normal n_a, w_b on n_b and turn θ meet s_a = w_a tan(θ/2) + (w_b − w_a) / sin θ past the end of a,
 * and likewise for b (derived: solve n_a·x = w_a, n_b·x = w_b).
 */
function mitre(a: End, b: End, turn: Turn): Joint {
  const { seam, sin, cos, half } = turn;
  const wide = Math.max(a.w, b.w);
  const extra = b.w - a.w;
  if (extra === 0 && cos > 0 && Math.abs(a.w * half) <= SNAP) {
    const k = a.w / (1 + cos);
    const x = a.w === 0 ? seam : { x: seam.x + (a.n.x + b.n.x) * k, y: seam.y + (a.n.y + b.n.y) * k };
    const last = a.run.segments.length - 1;
    return { before: { segment: last, t: 1, point: x }, after: { segment: 0, t: 0, point: x }, path: [] };
  }
  const shift = extra === 0 ? 0 : extra / sin;
  const sa = settled(a.w * half + shift);
  const sb = settled(b.w * half - shift);
  if (extra !== 0 && (sin === 0 || (sa * sb < 0 && Math.min(sa, sb) < -wide * JUST_OVER))) {
    return { ...(step(a, b, turn) ?? throughCorner(a.run, b.run)), note: 'stepped' };
  }
  const x = { x: a.p.x + a.away.x * sa, y: a.p.y + a.away.y * sa };
  if (sa >= 0 && sb >= 0) {
    const path: Segment[] = [];
    const far2 = a.w * a.w + sa * sa;
    if (far2 <= MITRE_LIMIT * MITRE_LIMIT * wide * wide) {
      const before = reach(a, sa, x, path);
      const after = reach(b, sb, x, path);
      return { before, after, path };
    }
    // Square to the direction of the mitre's point, at the wider allowance's distance from the seam corner.
    const far = Math.sqrt(far2);
    const ka = (wide * far - a.w * a.w) / sa;
    const kb = (wide * far - b.w * b.w) / sb;
    const xa = along(a.p, a.away, ka);
    const xb = along(b.p, b.away, kb);
    const before = reach(a, ka, xa, path);
    path.push(line(xa, xb));
    const after = reach(b, kb, xb, path);
    return { before, after, path, note: 'squaredOff' };
  }
  return trimmed(a, b, sa, sb, x) ?? throughCorner(a.run, b.run);
}

/** At least one cut line is shortened to where they meet; undefined when it is too short or too hollow for that. */
function trimmed(a: End, b: End, sa: number, sb: number, x: Point): Joint | undefined {
  if ((sa < 0 && a.run.cusped) || (sb < 0 && b.run.cusped)) return undefined;
  const path: Segment[] = [];
  const lineA = a.run.straight || sa >= 0;
  const lineB = b.run.straight || sb >= 0;
  if (lineA && lineB) {
    const before = reach(a, sa, x, path);
    const after = reach(b, sb, x, path);
    if ((sa < 0 && !within(before!)) || (sb < 0 && !within(after!))) return undefined;
    return { before, after, path };
  }
  if (!lineA && !lineB) {
    const found = curvesMeet(a.run.segments, b.run.segments, -sa, -sb);
    return found && { ...found, path };
  }
  const curve = lineA ? b : a;
  const other = lineA ? a : b;
  const cut = lineMeets(curve.run.segments, curve.last, other.p, other.away);
  if (!cut) return undefined;
  const s = (cut.point.x - other.p.x) * other.away.x + (cut.point.y - other.p.y) * other.away.y;
  // The curve may bend away so that the roles of "longer" and "shorter" change; a curved end only goes forward.
  if (s < 0 && !other.run.straight) return undefined;
  const reached = reach(other, s, cut.point, path);
  if (s < 0 && !within(reached!)) return undefined;
  return lineA ? { before: reached, after: cut, path } : { before: cut, after: reached, path };
}

/** Each cut line keeps its width up to the bisector of the corner; undefined where the edges turn back too far. */
function step(a: End, b: End, turn: Turn): Joint | undefined {
  if (turn.cos < -0.7) return undefined;
  const path: Segment[] = [];
  const sum = { x: a.n.x + b.n.x, y: a.n.y + b.n.y };
  const ends: Point[] = [];
  const cuts: (Cut | undefined)[] = [];
  for (const e of [a, b]) {
    const s = e.w * turn.half;
    let x = along(turn.seam, sum, e.w / (1 + turn.cos));
    if (s < 0 && !e.run.straight) {
      const cut = e.run.cusped ? undefined : lineMeets(e.run.segments, e.last, turn.seam, sum);
      if (!cut) return undefined;
      x = cut.point;
      cuts.push(cut);
    } else {
      const cut = e.run.straight ? stretched(e, s, x) : undefined;
      if (cut && s < 0 && !within(cut)) return undefined;
      cuts.push(cut);
    }
    ends.push(x);
  }
  const [xa, xb] = ends as [Point, Point];
  if (!cuts[0]) pushLine(path, a.p, xa);
  pushLine(path, xa, xb);
  if (!cuts[1]) pushLine(path, xb, b.p);
  return { before: cuts[0], after: cuts[1], path };
}

/**
 * Square or reflected end of the first-sewn edge's allowance. Its seam line, run on, meets the other's cut line at q; from q
 * the end goes square to the seam line, or along the mirror image of the other's cut line, up to its own cut line. The
 * result runs from `first` to `other`. Undefined when it would reach past MITRE_LIMIT or the edges are too short for it.
 */
function pressedEnd(first: End, other: End, turn: Turn, mirrored: boolean): Joint | undefined {
  const { seam, sin, cos } = turn;
  const far = MITRE_LIMIT * Math.max(first.w, other.w);
  const sq = other.w / sin;
  const sr = mirrored ? sq + (first.w * cos) / sin : sq;
  if (sq * sq > far * far || sr * sr + first.w * first.w > far * far) return undefined;
  const so = settled((-other.w * cos) / sin);
  // Where the first edge's seam line meets the other's cut line.
  let q = along(seam, first.away, sq);
  let otherCut: Cut | undefined;
  const tail: Segment[] = [];
  if (so < 0 && !other.run.straight) {
    otherCut = other.run.cusped ? undefined : lineMeets(other.run.segments, other.last, seam, first.away);
    if (!otherCut) return undefined;
    q = otherCut.point;
  } else if (other.run.straight) {
    otherCut = stretched(other, so, q);
    if (so < 0 && !within(otherCut)) return undefined;
  } else pushLine(tail, q, other.p);

  let end: Segment[];
  if (!mirrored || first.w === 0) {
    const s = (q.x - first.p.x) * first.away.x + (q.y - first.p.y) * first.away.y;
    end = [line(along(first.p, first.away, s), q)];
  } else if (other.run.straight) {
    end = [line(along(first.p, first.away, sr), q)];
  } else {
    const image = mirrorImage(first, other, seam, q, otherCut, tail[0]);
    if (!image) return undefined;
    end = image;
  }
  const head: Segment[] = [];
  const r = end[0]!.a;
  const s = settled((r.x - first.p.x) * first.away.x + (r.y - first.p.y) * first.away.y);
  let firstCut: Cut | undefined;
  if (first.run.straight) {
    firstCut = stretched(first, s, r);
    if (s < 0 && !within(firstCut)) return undefined;
  } else if (s >= 0) pushLine(head, first.p, r);
  else {
    // The end leans back over a curve: it stops where it meets the curve itself.
    if (first.run.cusped) return undefined;
    const own = first.last
      ? first.run.segments
      : inwards(first.run.segments, false, undefined).map(reverse).reverse();
    const found = curvesMeet(own, end);
    if (!found) return undefined;
    const { segment, t, point } = found.before;
    firstCut = first.last
      ? found.before
      : { segment: first.run.segments.length - 1 - segment, t: 1 - t, point };
    const cutEnd = end[found.after.segment]!;
    end = [
      withEnds(between(cutEnd, found.after.t, 1), point, cutEnd.d),
      ...end.slice(found.after.segment + 1),
    ];
  }
  const only = end.filter((e) => e.a.x !== e.d.x || e.a.y !== e.d.y);
  return { before: firstCut, after: otherCut, path: [...head, ...only, ...tail] };
}

/** The mirror image, in the first edge's seam line, of the other's cut line from q to the first's width inside. */
function mirrorImage(
  first: End,
  other: End,
  seam: Point,
  q: Point,
  cut: Cut | undefined,
  lead: Segment | undefined,
): Segment[] | undefined {
  const along1: Segment[] = inwards(other.run.segments, other.last, cut);
  if (lead) along1.unshift(lead);
  const inside = along(seam, first.n, -first.w);
  const hit = lineMeets(along1, false, inside, first.away);
  if (!hit) return undefined;
  const mirror = reflectionAcross(seam, along(seam, first.away, 1));
  const image: Segment[] = [];
  let start = q;
  for (let i = 0; i <= hit.segment; i++) {
    const s = i === hit.segment ? between(along1[i]!, 0, hit.t) : along1[i]!;
    const m = transform(s, mirror);
    const fitted = withEnds(m, start, m.d);
    image.push(fitted);
    start = fitted.d;
  }
  return image.map(reverse).reverse();
}

function turnedRound(j: Joint): Joint {
  return { ...j, before: j.after, after: j.before, path: j.path.map(reverse).reverse() };
}
