import type { Chain, Point, Segment } from './types.ts';
import type { CornerForm, Offset, OffsetEdge, OffsetNote } from './offset-types.ts';
import type { Joint } from './offset-end.ts';
import type { Piece } from './offset-tangles.ts';
import { runsOf } from './offset-edge.ts';
import { join, throughCorner } from './offset-corner.ts';
import { assemble } from './offset-assemble.ts';
import { untangle } from './offset-cleanup.ts';
import { signedArea } from './outline.ts';
import { reverseChain } from './chain-moved.ts';

export type { CornerForm, Offset, OffsetEdge, OffsetNote } from './offset-types.ts';
export { MITRE_LIMIT } from './offset-types.ts';

const MITRE: CornerForm = { kind: 'mitre' };

/**
 * The cut line of a piece: parallel to each edge at exactly its own width, straight parts exactly, curves as fitted cubics at
 * most 0.01 mm off, joined at corner i (between edge i and the next) in the form asked for. Edges are the closed seam line in
 * order, each starting bit for bit where the one before ends, clockwise on the screen (an outline the other way round is
 * turned, offset and turned back). Missing corner forms are mitres. A step is made instead of a mitre that would lengthen one
 * cut line and shorten the other by more than the wider allowance. Throws RangeError for an outline that is empty or open, or
 * a width that is negative or not finite.
 */
export function offsetOutline(edges: readonly OffsetEdge[], corners: readonly CornerForm[]): Offset {
  const outline = checked(edges);
  if (signedArea(outline) < 0) return turned(edges, corners);
  const runs = runsOf(edges);
  if (runs.length === 0) throw new RangeError('an outline needs segments with a length');
  const n = runs.length;
  const joints: Joint[] = [];
  for (let i = 0; i < n; i++) {
    const run = runs[i]!;
    joints.push(join(run, runs[(i + 1) % n]!, run.corner ? (corners[run.edge] ?? MITRE) : MITRE));
  }
  // Where a run would be cut away from both sides the joints go through the corners and the clean-up decides.
  for (let i = 0; i < n; i++) {
    const h = (i + n - 1) % n;
    const from = joints[h]!.after;
    const to = joints[i]!.before;
    if (!from || !to) continue;
    if (from.segment < to.segment || (from.segment === to.segment && from.t < to.t)) continue;
    for (const k of [h, i]) joints[k] = throughCorner(runs[k]!, runs[(k + 1) % n]!, joints[k]!.note);
  }
  const notes: OffsetNote[] = [];
  for (let i = 0; i < n; i++) {
    const { edge, to } = runs[i]!;
    const kind = joints[i]!.note;
    if (kind) notes.push({ kind, edge, at: to });
  }
  const { pieces, bridges } = untangle(assemble(runs, joints));
  for (const { from, to, at } of bridges) {
    const edge = Math.min(from >> 1, to >> 1);
    const other = Math.max(from >> 1, to >> 1);
    const apart = Math.min(other - edge, edges.length - other + edge);
    if (apart > 1) notes.push({ kind: 'overlap', edge, other, at });
    else if (apart === 0 && runs.some((r) => r.edge === edge && r.cusped))
      notes.push({ kind: 'tightCurve', edge, at });
  }
  return sorted(pieces, edges, notes);
}

/** All segments in one chain; the checks of offsetOutline. */
function checked(edges: readonly OffsetEdge[]): Segment[] {
  const outline: Segment[] = [];
  for (let i = 0; i < edges.length; i++) {
    const { chain, width } = edges[i]!;
    if (!(width >= 0 && width < Infinity))
      throw new RangeError(`edge ${i}: the width ${width} is not an allowance`);
    for (const s of chain) outline.push(s);
  }
  if (outline.length === 0) throw new RangeError('an outline needs edges');
  let end: Point = outline[outline.length - 1]!.d;
  for (const s of outline) {
    if (s.a.x !== end.x || s.a.y !== end.y)
      throw new RangeError(`the outline is open at (${s.a.x}, ${s.a.y})`);
    end = s.d;
  }
  return outline;
}

/** An outline that runs counter-clockwise: offset as its reverse. */
function turned(edges: readonly OffsetEdge[], corners: readonly CornerForm[]): Offset {
  const n = edges.length;
  const back = (c: Chain): Chain => reverseChain(c);
  const other = (f: CornerForm): CornerForm =>
    f.kind === 'square' || f.kind === 'reflect'
      ? { kind: f.kind, first: f.first === 'before' ? 'after' : 'before' }
      : f;
  // Reversed edge k is edge n − 1 − k; the corner after it is the one after edge n − 2 − k.
  const forms: CornerForm[] = [];
  for (let k = 0; k < n; k++) forms.push(other(corners[(2 * n - 2 - k) % n] ?? MITRE));
  const made = offsetOutline(
    edges.map((_, k) => ({ chain: back(edges[n - 1 - k]!.chain), width: edges[n - 1 - k]!.width })),
    forms,
  );
  const corner = new Set<OffsetNote['kind']>(['stepped', 'squaredOff', 'mitred']);
  return {
    cut: back(made.cut),
    edges: edges.map((_, i) => back(made.edges[n - 1 - i]!)),
    corners: edges.map((_, i) => back(made.corners[(2 * n - 2 - i) % n]!)),
    notes: made.notes.map((m) => ({
      ...m,
      edge: corner.has(m.kind) ? (2 * n - 2 - m.edge) % n : n - 1 - m.edge,
      ...(m.other === undefined ? {} : { other: n - 1 - m.other }),
    })),
  };
}

/** Sorts the pieces of the cut line to the edges and corners they belong to, starting at the first edge that is left. */
function sorted(pieces: readonly Piece[], edges: readonly OffsetEdge[], notes: OffsetNote[]): Offset {
  const n = edges.length;
  const count = pieces.length;
  // Stretches of one edge each; where an edge is left in several, the longest counts.
  const own: { from: number; to: number; size: number }[] = [];
  let begin = 0;
  while (begin < count && pieces[begin]!.tag === pieces[(begin + count - 1) % count]!.tag) begin++;
  if (begin === count) begin = 0;
  for (let k = 0; k < count;) {
    const tag = pieces[(begin + k) % count]!.tag;
    let to = k;
    let size = 0;
    for (; to < count && pieces[(begin + to) % count]!.tag === tag; to++) {
      const { a, d } = pieces[(begin + to) % count]!.segment;
      size += Math.abs(a.x - d.x) + Math.abs(a.y - d.y);
    }
    const edge = tag >> 1;
    if (tag % 2 === 0 && !(own[edge] && own[edge]!.size >= size))
      own[edge] = { from: begin + k, to: begin + to, size };
    k = to;
  }
  const edgeChains: Segment[][] = [];
  const cornerChains: Segment[][] = [];
  const left: number[] = [];
  for (let e = 0; e < n; e++) {
    edgeChains.push([]);
    cornerChains.push([]);
    const o = own[e];
    if (!o) {
      const { chain, width } = edges[e]!;
      if (chain.length > 0 && width > 0) notes.push({ kind: 'swallowed', edge: e, at: chain[0]!.a });
      continue;
    }
    left.push(e);
    for (let k = o.from; k < o.to; k++) edgeChains[e]!.push(pieces[k % count]!.segment);
  }
  const cut: Segment[] = [];
  if (left.length === 0) for (const p of pieces) cut.push(p.segment);
  for (let m = 0; m < left.length; m++) {
    const e = left[m]!;
    const next = own[left[(m + 1) % left.length]!]!;
    let k = own[e]!.to % count;
    // All the way round when only one edge is left.
    if (!(left.length === 1 && own[e]!.to - own[e]!.from === count)) {
      for (; k !== next.from % count; k = (k + 1) % count) cornerChains[e]!.push(pieces[k]!.segment);
    }
    for (const s of edgeChains[e]!) cut.push(s);
    for (const s of cornerChains[e]!) cut.push(s);
  }
  return { cut, edges: edgeChains, corners: cornerChains, notes };
}
