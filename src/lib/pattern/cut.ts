import type { Chain, Place, Point } from '../geometry/types.ts';
import type { Edge, EdgeNotch, EdgeRole, Origin, Part, Side } from './types.ts';
import { distance, samePoint } from '../geometry/point.ts';
import { splitAt } from '../geometry/segment.ts';
import { nearestOnChain } from '../geometry/nearest.ts';
import { chainEnd, chainStart } from '../geometry/chain.ts';
import { reverseChain } from '../geometry/chain-moved.ts';
import { allClear } from './clear.ts';
import { afterSlash, cornerAt, endAt, startAt } from './outline.ts';
import { type Outcome, done, refuse } from './outcome.ts';
import { shareOut } from './share-out.ts';
import { withEdge } from './with.ts';
import { withNotch } from './with-marks.ts';

/** What one bank of a cut is called; its chain comes from the cut. */
export interface Bank {
  readonly id: string;
  readonly role: EdgeRole;
  readonly side: Side;
  readonly origin: Origin;
  readonly partner?: string | undefined;
  readonly dart?: string | undefined;
}

/** A stretch of a cut, in its direction; `left` and `right` name the banks on the cutter's hands. */
export interface CutStretch {
  readonly chain: Chain;
  readonly left: Bank;
  readonly right: Bank;
}

/** An outline edge that the cut divided into `edge.1` and `edge.2`, mm from its start. */
export interface SplitEdge {
  readonly edge: string;
  readonly at: number;
}

export interface CutPart {
  /** The sheet on the left hand of the cutter, and the one on the right. Both keep the part's id. */
  readonly left: Part;
  readonly right: Part;
  readonly split: readonly SplitEdge[];
}

/** How near (mm) a cut's end must lie to the outline to count as on it, and to a corner to count as the corner. */
const ON_EDGE = 1e-6;
const ON_CORNER = 1e-9;

/** A place on an outline: at the start of edge `edge` when `place` is absent. */
interface Spot {
  readonly edge: number;
  readonly place?: Place;
}

/** Where p lies on the outline, or undefined when it is farther than a millionth of a millimetre from it. */
export function spotOn(edges: readonly Edge[], p: Point): Spot | undefined {
  const corner = cornerAt(edges, p);
  if (corner >= 0) return { edge: corner };
  const here = { minX: p.x, minY: p.y, maxX: p.x, maxY: p.y };
  for (let i = 0; i < edges.length; i++) {
    const { chain } = edges[i]!;
    if (allClear(chain, here, ON_EDGE)) continue;
    const place = nearestOnChain(chain, p);
    if (place.distance > ON_EDGE) continue;
    const { segment, t } = place;
    if ((segment === 0 && t === 0) || distance(chainStart(chain), p) <= ON_CORNER) return { edge: i };
    if ((segment === chain.length - 1 && t === 1) || distance(chainEnd(chain), p) <= ON_CORNER)
      return { edge: (i + 1) % edges.length };
    return { edge: i, place };
  }
  return undefined;
}

/** Whether an edge's chain runs against its origin: true of the banks on the left hand of the line, `…/a` and what was cut off it. */
export function runsBackwards({ role, id, origin }: Edge): boolean {
  // The banks of a slash are dart legs; a dart leg of the block is its own origin.
  if (role === 'dart-leg') return id !== origin.edge && id.endsWith('/a');
  if (role !== 'style-line' && role !== 'connector') return false;
  const at = afterSlash(id);
  return id.charAt(at) === 'a' && (at + 1 === id.length || id.charAt(at + 1) === '.');
}

/** The two parts of an edge cut at a place, with the very point `joint` between them. */
export function splitEdge(e: Edge, at: Place, joint: Point): readonly [Edge, Edge] {
  const [s, u] = splitAt(e.chain[at.segment]!, at.t);
  const first: Chain = at.t === 0 ? e.chain.slice(0, at.segment) : [...e.chain.slice(0, at.segment), s];
  const second: Chain = at.t === 1 ? e.chain.slice(at.segment + 1) : [u, ...e.chain.slice(at.segment + 1)];
  const { edge, from, to } = e.origin;
  const back = runsBackwards(e);
  const middle = back ? to - at.length : from + at.length;
  return [
    withEdge(e, {
      id: `${e.id}.1`,
      chain: endAt(first, joint),
      origin: back ? { edge, from: middle, to } : { edge, from, to: middle },
    }),
    withEdge(e, {
      id: `${e.id}.2`,
      chain: startAt(second, joint),
      origin: back ? { edge, from, to: middle } : { edge, from: middle, to },
    }),
  ];
}

/** The outline with a corner at p, and the index of the edge that starts there. */
function withCorner(
  edges: readonly Edge[],
  spot: Spot,
  p: Point,
  split: SplitEdge[],
): { readonly edges: readonly Edge[]; readonly at: number } {
  if (spot.place === undefined) return { edges, at: spot.edge };
  const e = edges[spot.edge]!;
  split.push({ edge: e.id, at: spot.place.length });
  const halves = splitEdge(e, spot.place, p);
  const out = edges.slice();
  out.splice(spot.edge, 1, halves[0], halves[1]);
  return { edges: out, at: spot.edge + 1 };
}

/** So many edges from index i on, round the outline; behind them it has room for `more` (and holds anything there). */
function around(edges: readonly Edge[], i: number, count: number, more: number): Edge[] {
  const n = edges.length;
  const out = edges.slice(0, Math.min(n, count + more));
  for (let k = 0; k < count; k++) out[k] = edges[(i + k) % n]!;
  return out;
}

/**
 * Cuts a part in two along a path that runs inside it from one place on its outline to another (the caller sees to it
 * that it touches the outline nowhere else). Areas add up; names, origins, landmarks and lines go to the sheet that holds them; a
 * landmark on the cut's own ends goes to both; one that lies on neither sheet (in the open mouth of a dart) is dropped.
 * Refusals: `cut-off-outline` when an end is not on the outline, `cut-ends-together` when both are one corner.
 */
export function cutPart(part: Part, path: readonly CutStretch[]): Outcome<CutPart> {
  let start = chainStart(path[0]!.chain);
  let end = chainEnd(path[path.length - 1]!.chain);
  const split: SplitEdge[] = [];

  const s = spotOn(part.edges, start);
  if (s === undefined) return refuse('cut-off-outline', { x: start.x, y: start.y });
  if (s.place === undefined) start = chainStart(part.edges[s.edge]!.chain);
  const opened = withCorner(part.edges, s, start, split);

  const e = spotOn(opened.edges, end);
  if (e === undefined) return refuse('cut-off-outline', { x: end.x, y: end.y });
  if (e.place === undefined) end = chainStart(opened.edges[e.edge]!.chain);
  const both = withCorner(opened.edges, e, end, split);
  if (samePoint(start, end)) return refuse('cut-ends-together');
  const j = both.at;
  const i = e.place !== undefined && e.edge < opened.at ? opened.at + 1 : opened.at;

  const n = both.edges.length;
  const banks = path.length;
  const onLeft = i < j ? j - i : n - i + j;
  const onRight = n - onLeft;
  const left = around(both.edges, i, onLeft, banks);
  const right = around(both.edges, j, onRight, banks);
  for (let k = 0; k < banks; k++) {
    let { chain } = path[k]!;
    if (k === 0) chain = startAt(chain, start);
    if (k === banks - 1) chain = endAt(chain, end);
    right[onRight + k] = bankEdge(path[k]!.right, chain);
  }
  for (let k = banks - 1; k >= 0; k--)
    left[onLeft + banks - 1 - k] = bankEdge(path[k]!.left, reverseChain(right[onRight + k]!.chain));
  const sheets = shareOut(part, left, right, path);
  return done({ left: sheets.left, right: sheets.right, split });
}

const bankEdge = ({ id, role, side, origin, partner, dart }: Bank, chain: Chain): Edge => ({
  id,
  role,
  side,
  chain,
  origin,
  partner,
  dart,
});

/** Notches of a piece after some of its edges were divided. */
export function followSplits(
  notches: readonly EdgeNotch[],
  splits: readonly SplitEdge[],
): readonly EdgeNotch[] {
  let out = notches;
  for (const { edge, at } of splits) {
    if (!out.some((n) => n.edge === edge)) continue;
    out = out.map((n) => {
      if (n.edge !== edge) return n;
      return n.at < at
        ? withNotch(n, { edge: `${edge}.1` })
        : withNotch(n, { edge: `${edge}.2`, at: n.at - at });
    });
  }
  return out;
}
