import { placeAtLength } from '../geometry/chain.ts';
import { offsetOutline, type CornerForm as OffsetCorner, type OffsetNote } from '../geometry/offset.ts';
import { tangentAt } from '../geometry/segment.ts';
import type { Chain, Point } from '../geometry/types.ts';
import { chainOf, seamGroups, type SeamGroup } from './outline.ts';
import { done, refuse, type Outcome } from './outcome.ts';
import type { CornerRule, Piece } from './types.ts';
import { openPiece } from './with.ts';
import { withAllowances, withCorners } from './with-allowances.ts';
import { withEntry } from './with-entry.ts';

/** No allowance or hem is wider, mm: more is a slip of the pen. */
const WIDEST = 150;

/** A nick is 2.5 mm deep and ends at least 1/8 in (3.175 mm) from the seam line. */
const NICK = 2.5;
const NICK_CLEAR = 3.175;

/** A notch carried out to the cut line. */
export interface CarriedNotch {
  readonly id: string;
  readonly edge: string;
  /** On the seam line, and square to it on the cut line. */
  readonly from: Point;
  readonly to: Point;
  /** Where the nick ends, cut from `to` towards `from`; `to` itself where the allowance is too narrow for one. */
  readonly nick: Point;
}

export interface CutLine {
  /** Closed, clockwise on the screen. */
  readonly cut: Chain;
  /** The part of it that belongs to each seam group, in outline direction, without the corners between. */
  readonly groups: Readonly<Record<string, Chain>>;
  /** What the corners or narrow places did that was not asked for; `edge` counts seam groups. */
  readonly notes: readonly OffsetNote[];
  readonly notches: readonly CarriedNotch[];
}

/** Give all edges of a seam group their width in mm; 0 for a bound edge. */
export function setAllowance(piece: Piece, group: string, width: number): Outcome<Piece> {
  if (!isGroup(seamGroups(piece), group)) return refuse('no-such-group', { group });
  if (!(width >= 0 && width <= WIDEST)) return refuse('bad-width', { width });
  return done(withAllowances(piece, withEntry(piece.allowances, group, width)));
}

function isGroup(groups: readonly SeamGroup[], id: string): boolean {
  for (const g of groups) if (g.id === id) return true;
  return false;
}

const FORMS: readonly string[] = ['mitre', 'square', 'reflect', 'step'];

/** Whether somewhere on the outline group `b` comes right after group `a`. */
function meet(groups: readonly SeamGroup[], a: string, b: string): boolean {
  for (let i = 0; i < groups.length; i++) {
    if (groups[i]!.id === a && groups[(i + 1) % groups.length]!.id === b) return true;
  }
  return false;
}

/** Say how the allowance ends at the corner of two neighbouring seam groups (named in either order). */
export function setCorner(piece: Piece, rule: CornerRule): Outcome<Piece> {
  const { before, after, form, first } = rule;
  if (!FORMS.includes(form)) return refuse('no-such-form', { form });
  if (first !== undefined && first !== before && first !== after)
    return refuse('first-not-at-corner', { first });
  const groups = seamGroups(piece);
  const inOrder = meet(groups, before, after);
  if (!inOrder && !meet(groups, after, before)) return refuse('no-such-corner', { before, after });
  const [one, other] = inOrder ? [before, after] : [after, before];
  const corners: CornerRule[] = piece.corners.slice();
  const at = corners.findIndex((c) => c.before === one && c.after === other);
  if (at >= 0) corners.splice(at, 1);
  corners.push({ before: one, after: other, form, first });
  return done(withCorners(piece, corners));
}

/** Carry the notches out from the seam line to the cut line. */
export function carryNotches(piece: Piece): Outcome<Piece> {
  const missing = seamGroups(piece).find((g) => piece.allowances[g.id] === undefined);
  if (missing !== undefined) return refuse('no-cut-line', { group: missing.id });
  const next = openPiece(piece);
  next.notchesCarried = true;
  return done(next);
}

/** The rule for a corner as the offset wants it. Unless told, a style line is sewn before what it runs into. */
function formAt(piece: Piece, before: string, after: string): OffsetCorner {
  const rule = piece.corners.find((c) => c.before === before && c.after === after);
  if (!rule) return { kind: 'mitre' };
  if (rule.form === 'mitre' || rule.form === 'step') return { kind: rule.form };
  const first = rule.first ?? (after === 'style-line' ? after : before);
  return { kind: rule.form, first: first === after ? 'after' : 'before' };
}

/**
 * The cut line: parallel to the seam line at each group's own width, with the corner forms that were chosen (mitre where none
 * was). Undefined until every group of the piece has a width.
 */
export function cutLine(piece: Piece): CutLine | undefined {
  const had = drawn.get(piece);
  if (had) return had;
  const made = drawCutLine(piece);
  if (made) drawn.set(piece, made);
  return made;
}

/** A piece never changes, and several checks and the table ask for its cut line: it is drawn once. */
const drawn = new WeakMap<Piece, CutLine>();

function drawCutLine(piece: Piece): CutLine | undefined {
  const groups = seamGroups(piece);
  const edges: { chain: Chain; width: number }[] = [];
  for (const g of groups) {
    const width = piece.allowances[g.id];
    if (width === undefined) return undefined;
    edges.push({ chain: chainOf(g.edges), width });
  }
  const corners = groups.map((g, i) => formAt(piece, g.id, groups[(i + 1) % groups.length]!.id));
  const made = offsetOutline(edges, corners);
  const byGroup: Record<string, Chain> = {};
  groups.forEach((g, i) => {
    // A group that an open connector divides comes twice.
    byGroup[g.id in byGroup ? `${g.id}.2` : g.id] = made.edges[i]!;
  });
  return {
    cut: made.cut,
    groups: byGroup,
    notes: made.notes,
    notches: piece.notchesCarried ? carried(piece, groups) : [],
  };
}

function carried(piece: Piece, groups: readonly SeamGroup[]): CarriedNotch[] {
  const out: CarriedNotch[] = [];
  for (const m of piece.notches) {
    if (m.ghost) continue;
    for (const g of groups) {
      const edge = g.edges.find((e) => e.id === m.edge);
      if (!edge) continue;
      const place = placeAtLength(edge.chain, m.at);
      const t = tangentAt(edge.chain[place.segment]!, place.t);
      const width = piece.allowances[g.id]!;
      // Clockwise on the screen: the outside lies on the left hand.
      const out1 = (d: number): Point => ({ x: place.point.x + d * t.y, y: place.point.y - d * t.x });
      const depth = Math.max(0, Math.min(NICK, width - NICK_CLEAR));
      out.push({ id: m.id, edge: m.edge, from: place.point, to: out1(width), nick: out1(width - depth) });
    }
  }
  return out;
}
