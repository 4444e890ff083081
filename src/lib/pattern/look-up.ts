import type { Chain, Point, Segment } from '../geometry/types.ts';
import type { Dart, Edge, Part, Piece } from './types.ts';
// By itself: the file of areas also brings all crossings of curves, which the lesson page has no room for.
import { turnsAround } from '../geometry/inside.ts';
import { samePoint } from '../geometry/point.ts';
import { cubic, line } from '../geometry/segment.ts';

/** The edge of that id: of the treated seam outline if there is one, else of the parts. */
export function findEdge(piece: Piece, id: string): Edge | undefined {
  if (piece.seam !== undefined) {
    for (const e of piece.seam) if (e.id === id) return e;
  }
  for (const part of piece.parts) for (const e of part.edges) if (e.id === id) return e;
  return undefined;
}

/** The part that has the edge of that id. */
export function partOf(piece: Piece, edgeId: string): Part | undefined {
  for (const part of piece.parts) for (const e of part.edges) if (e.id === edgeId) return part;
  return undefined;
}

/** The edge of that id of one part. */
export function edgeOn(part: Part, id: string): Edge | undefined {
  for (const e of part.edges) if (e.id === id) return e;
  return undefined;
}

const SLASH = 47;

/** Where the last word of an id begins, behind its last slash; from the end by hand, which is quicker than `lastIndexOf`. */
export function afterSlash(id: string): number {
  let at = id.length;
  while (at > 0 && id.charCodeAt(at - 1) !== SLASH) at--;
  return at;
}

/** Index of the edge that starts in exactly that point, or −1. */
export function cornerAt(edges: readonly Edge[], p: Point): number {
  for (let i = 0; i < edges.length; i++) {
    const { a } = edges[i]!.chain[0]!;
    if (a.x === p.x && a.y === p.y) return i;
  }
  return -1;
}

/** Where a landmark lies; of several sheets that share it, on the one whose grain is kept. */
export function landmark(piece: Piece, id: string): Point | undefined {
  let found: Point | undefined;
  for (const part of piece.parts) {
    if (!Object.hasOwn(part.landmarks, id)) continue;
    const p = part.landmarks[id]!;
    if (part.grain === 'kept') return p;
    found ??= p;
  }
  return found;
}

export function findDart(piece: Piece, id: string): Dart | undefined {
  for (const d of piece.darts) if (d.id === id) return d;
  return undefined;
}

/** The leg that runs into the tip in outline order, and the one that runs out of it. */
export const legIds = (dart: Dart): readonly [into: string, outOf: string] =>
  dart.side === 'left' ? [dart.upper, dart.lower] : [dart.lower, dart.upper];

/** The two legs of a dart as edges: `into` ends at the tip, `outOf` starts there. */
export function legsOf(piece: Piece, dart: Dart): { readonly into: Edge; readonly outOf: Edge } | undefined {
  const [a, b] = legIds(dart);
  let into: Edge | undefined;
  let outOf: Edge | undefined;
  for (const part of piece.parts) {
    for (const e of part.edges) {
      if (e.id === a) into = e;
      else if (e.id === b) outOf = e;
    }
  }
  return into && outOf ? { into, outOf } : undefined;
}

/** Whether a point lies off a sheet with these edges all round; one on an edge (within a millionth of a mm) does not. */
export function isOff(edges: readonly Edge[], p: Point): boolean {
  let winding = 0;
  for (const e of edges) {
    const turns = turnsAround(e.chain, p);
    if (turns === undefined) return false;
    winding += turns;
  }
  return winding === 0;
}

/** All segments of consecutive edges as one chain. */
export function chainOf(edges: readonly Edge[]): Chain {
  const out = [];
  for (const e of edges) for (const s of e.chain) out.push(s);
  return out;
}

/** The chain with its first point replaced by p; for gaps that are rounding only. */
export function startAt(chain: Chain, p: Point): Chain {
  const first = chain[0]!;
  if (samePoint(first.a, p)) return chain;
  const out: Segment[] = chain.slice();
  out[0] = first.kind === 'line' ? line(p, first.d) : cubic(p, first.b, first.c, first.d);
  return out;
}

/** The chain with its last point replaced by p; for gaps that are rounding only. */
export function endAt(chain: Chain, p: Point): Chain {
  const last = chain[chain.length - 1]!;
  if (samePoint(last.d, p)) return chain;
  const out: Segment[] = chain.slice();
  out[out.length - 1] = last.kind === 'line' ? line(last.a, p) : cubic(last.a, last.b, last.c, p);
  return out;
}
