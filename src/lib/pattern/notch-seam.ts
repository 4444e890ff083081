import { chainEnd, chainStart, pointAtLength } from '../geometry/chain.ts';
import { distance } from '../geometry/point.ts';
import type { Point } from '../geometry/types.ts';
import { edgeLength } from './edge-length.ts';
import { outlineOf } from './outline.ts';
import { type Outcome, done, refuse } from './outcome.ts';
import type { Edge, EdgeNotch, Piece } from './types.ts';
import { withPiece } from './with.ts';

/** Ends this near (mm) to each other are one point. */
const ONE_POINT = 1e-6;

/** A piece's side of a seam it was parted along: its two intervals, and at which end of each the bust point lies. */
export interface PartedSeam {
  readonly first: Edge;
  readonly second: Edge;
  readonly joint: Point;
}

/** The piece's banks of the princess line of that name; undefined when it has none. */
export function partedSeam(piece: Piece, line: string): PartedSeam | undefined {
  const outline = outlineOf(piece);
  const bank = (n: 1 | 2): Edge | undefined =>
    outline.find((e) => e.id === `${line}/${n}/a` || e.id === `${line}/${n}/b`);
  const [first, second] = [bank(1), bank(2)];
  if (first === undefined || second === undefined) return undefined;
  const ends = [chainStart(first.chain), chainEnd(first.chain)];
  const joint = ends.find(
    (p) =>
      distance(p, chainStart(second.chain)) <= ONE_POINT || distance(p, chainEnd(second.chain)) <= ONE_POINT,
  );
  return joint && { first, second, joint };
}

const startsAt = (edge: Edge, joint: Point): boolean => distance(chainStart(edge.chain), joint) <= ONE_POINT;

/**
 * The place on a parted seam `off` mm from where its intervals meet (the bust point): along the first interval if `off` is zero or more,
 * else along the second. Undefined beyond the seam's ends.
 */
export function placeOff(
  seam: PartedSeam,
  off: number,
): { readonly edge: Edge; readonly at: number; readonly point: Point } | undefined {
  const edge = off < 0 ? seam.second : seam.first;
  const length = edgeLength(edge);
  const along = Math.abs(off);
  if (!(along <= length)) return undefined;
  const at = startsAt(edge, seam.joint) ? along : length - along;
  return { edge, at, point: pointAtLength(edge.chain, at) };
}

/** How far a notch stands from where the intervals of a parted seam meet, as in `placeOff`; undefined when it is not on that seam. */
export function offOf(seam: PartedSeam, notch: EdgeNotch): number | undefined {
  const edge = [seam.first, seam.second].find((e) => e.id === notch.edge);
  if (edge === undefined) return undefined;
  const along = startsAt(edge, seam.joint) ? notch.at : edgeLength(edge) - notch.at;
  return edge === seam.first ? along : -along;
}

/**
 * Mark a notch on both edges of a seam that a piece was parted along, as far from the bust point on one as on the other, or move the one
 * with that id: `off` mm towards the edge that the seam begins at, or with a minus towards the one that it ends at. Refusals: `no-such-line`
 * when not both pieces of the seam are there, `notch-off-seam` beyond its ends.
 */
export function notchSeam(
  pieces: readonly Piece[],
  line: string,
  id: string,
  off: number,
): Outcome<readonly Piece[]> {
  let sides = 0;
  const marked: Piece[] = [];
  for (const piece of pieces) {
    const seam = partedSeam(piece, line);
    if (seam === undefined) {
      marked.push(piece);
      continue;
    }
    sides++;
    const place = placeOff(seam, off);
    if (place === undefined) return refuse('notch-off-seam', { notch: id, at: off });
    const others = piece.notches.filter((m) => m.id !== id);
    const own: EdgeNotch = { id, at: place.at, ghost: undefined, edge: place.edge.id, line };
    marked.push(withPiece(piece, { notches: [...others, own] }));
  }
  return sides < 2 ? refuse('no-such-line', { line }) : done(marked);
}

/** The edges of the block that a parted seam of a piece begins and ends at; undefined when the piece has no such seam. */
export function seamEnds(piece: Piece, line: string): readonly [string, string] | undefined {
  const seam = partedSeam(piece, line);
  const outline = outlineOf(piece);
  if (seam === undefined) return undefined;
  const beside = (edge: Edge): string => {
    const i = outline.findIndex((e) => e.id === edge.id);
    const next = outline[(i + (startsAt(edge, seam.joint) ? 1 : outline.length - 1)) % outline.length]!;
    // Both halves of an edge that a dart divides are that edge.
    return next.origin.edge.replace(/-(inner|outer)$/, '');
  };
  return [beside(seam.first), beside(seam.second)];
}
