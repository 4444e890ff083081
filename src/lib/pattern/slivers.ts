import type { Chain } from '../geometry/types.ts';
import type { Edge, Piece } from './types.ts';
import { line, pointAt } from '../geometry/segment.ts';
import { distance } from '../geometry/point.ts';
import { nearestOnChain } from '../geometry/nearest.ts';
import { chainEnd, chainLength, chainStart, reverseChain, subchain } from '../geometry/chain.ts';
import { signedArea } from '../geometry/outline.ts';
import { outlineOf } from './outline.ts';
import { isRedrawn } from './overlay.ts';
import { withoutSeam } from './with.ts';

/** Lengths this near, mm, are one place. */
const LEAST = 1e-9;

/** What a treatment added to the piece (positive area) or took from it (negative), with its opening left out. */
export interface Sliver {
  /** The redrawn edge: a bridge, or the trimmed seam's end edge. */
  readonly edge: string;
  /** Closed: along the seam as cut, back along the seam as treated. */
  readonly chain: Chain;
  /** mm² */
  readonly area: number;
  /** Largest distance of the treated edge from the seam as cut, mm. */
  readonly width: number;
}

/**
 * The regions between the seam outline as it was cut and as it was treated, one for each edge that a treatment redrew; the
 * mouth of a connector's opening counts as closed by its chord. Empty without a treatment.
 */
export function slivers(piece: Piece): readonly Sliver[] {
  const { seam } = piece;
  if (seam === undefined) return [];
  const before = asCut(outlineOf(withoutSeam(piece)));
  const out: Sliver[] = [];
  for (const edge of seam) {
    if (!isRedrawn(edge)) continue;
    const sliver = sliverOf(edge, before);
    if (sliver !== undefined) out.push(sliver);
  }
  return out;
}

/** The outline before treatment as one chain, openings closed by chords. */
function asCut(edges: readonly Edge[]): Chain {
  const out = [];
  const n = edges.length;
  for (let i = 0; i < n; i++) {
    const e = edges[i]!;
    const next = edges[(i + 1) % n]!;
    if (e.role === 'connector' && next.role === 'connector' && e.dart === next.dart)
      out.push(line(chainStart(e.chain), chainEnd(next.chain)));
    else if (e.role === 'connector' && edges[(i + n - 1) % n]!.role === 'connector') continue;
    else out.push(...e.chain);
  }
  return out;
}

/**
 * The area by which a redrawn edge changed the piece, mm²: negative where paper was taken away. Undefined for an edge that no
 * treatment redrew.
 */
export function sliverArea(piece: Piece, edgeId: string): number | undefined {
  const edge = piece.seam?.find((e) => e.id === edgeId && isRedrawn(e));
  const region = edge && regionOf(edge, asCut(outlineOf(withoutSeam(piece))));
  return region && signedArea(region);
}

function sliverOf(edge: Edge, before: Chain): Sliver | undefined {
  const chain = regionOf(edge, before);
  if (chain === undefined) return undefined;
  let width = 0;
  for (const s of edge.chain) {
    for (let k = 0; k <= 32; k++)
      width = Math.max(width, nearestOnChain(before, pointAt(s, k / 32)).distance);
  }
  return { edge: edge.id, chain, area: signedArea(chain), width };
}

/** Closed: along the treated edge, back along the seam as cut. */
function regionOf(edge: Edge, before: Chain): Chain | undefined {
  const start = nearestOnChain(before, chainStart(edge.chain));
  const end = nearestOnChain(before, chainEnd(edge.chain));
  const cut = stretch(before, start.length, end.length);
  if (cut === undefined) return undefined;
  // The treated edge keeps the clockwise sense: what lies between it and the cut seam on the outer side was added.
  const closed = [...closing(chainEnd(edge.chain), chainEnd(cut)), ...reverseChain(cut)];
  return [...edge.chain, ...closed, ...closing(chainStart(cut), chainStart(edge.chain))];
}

const closing = (p: Chain[number]['a'], q: Chain[number]['a']): Chain =>
  distance(p, q) > 1e-9 ? [line(p, q)] : [];

/** The stretch of the closed chain from one length on to another, mm, over its start if need be. */
function stretch(c: Chain, from: number, to: number): Chain | undefined {
  const all = chainLength(c);
  if (Math.abs(from - to) <= LEAST) return undefined;
  if (from < to) return subchain(c, from, to);
  const tail = all - from > LEAST ? subchain(c, from, all) : [];
  const head = to > LEAST ? subchain(c, 0, to) : [];
  const both = [...tail, ...head];
  return both.length > 0 ? both : undefined;
}
