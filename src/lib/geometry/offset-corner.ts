import type { Point, Segment } from './types.ts';
import { MITRE_LIMIT } from './offset-types.ts';
import type { CornerForm, OffsetNote } from './offset-types.ts';
import type { Run } from './offset-edge.ts';
import type { Cut } from './offset-crossing.ts';
import { curvesMeet, lineMeets } from './offset-crossing.ts';
import { along, endOf, pushLine, reach, settled, stretched, within } from './offset-end.ts';
import type { End, Joint, Turn } from './offset-end.ts';
import { pressedEnd } from './offset-pressed.ts';
import { line, reverse } from './segment.ts';

/** Parallels that miss each other by less than this at an all but smooth joint are simply drawn together (mm). */
const SNAP = 1e-3;

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
  return { path, note };
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

function turnedRound(j: Joint): Joint {
  return { ...j, before: j.after, after: j.before, path: j.path.map(reverse).reverse() };
}
