import type { Chain, Point, Segment } from '../geometry/types.ts';
import type { Edge, Piece } from './types.ts';
import { line, pointAt, reverse } from '../geometry/segment.ts';
import { distance } from '../geometry/point.ts';
import { nearestOnChain } from '../geometry/nearest.ts';
import { chainEnd, chainStart } from '../geometry/chain.ts';
import { signedArea } from '../geometry/outline.ts';
import { Measured } from './measured.ts';
import { outlineOf } from './outline.ts';
import { isRedrawn } from './overlay.ts';
import { withoutSeam } from './with-allowances.ts';

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

/** The seam outline of a piece before any treatment. */
export const outlineAsCut = (piece: Piece): readonly Edge[] => outlineOf(withoutSeam(piece));

/**
 * The regions between the seam outline as it was cut and as it was treated, one for each edge that a treatment redrew; the
 * mouth of a connector's opening counts as closed by its chord. Empty without a treatment.
 */
export function slivers(piece: Piece): readonly Sliver[] {
  const { seam } = piece;
  if (seam === undefined) return [];
  const before = new Measured(closed(outlineAsCut(piece)));
  const out: Sliver[] = [];
  for (const edge of seam) {
    // What was drawn over a dart's opening stands for the dart itself, not for a blend.
    if (!isRedrawn(edge) || piece.fullness?.some((f) => f.edge === edge.id)) continue;
    const sliver = sliverOf(edge, before);
    if (sliver !== undefined) out.push(sliver);
  }
  return out;
}

/** An outline as one chain, openings closed by chords. */
function closed(edges: readonly Edge[]): Chain {
  const out: Segment[] = [];
  const n = edges.length;
  for (let i = 0; i < n; i++) {
    const e = edges[i]!;
    if (e.role === 'connector') {
      const next = edges[i + 1 < n ? i + 1 : 0]!;
      if (next.role === 'connector' && e.dart === next.dart) {
        out.push(line(chainStart(e.chain), chainEnd(next.chain)));
        continue;
      }
      if (edges[i > 0 ? i - 1 : n - 1]!.role === 'connector') continue;
    }
    for (const s of e.chain) out.push(s);
  }
  return out;
}

/**
 * The area by which an edge that a treatment redrew changed the piece, mm²: negative where paper was taken away. `cut`: the
 * outline before the treatment. Undefined where the edge lies on it.
 */
export function sliverArea(edge: Edge, cut: readonly Edge[]): number | undefined {
  const region = regionOf(edge, new Measured(closed(cut)));
  return region && signedArea(region);
}

function sliverOf(edge: Edge, before: Measured): Sliver | undefined {
  const chain = regionOf(edge, before);
  if (chain === undefined) return undefined;
  let width = 0;
  for (const s of edge.chain) {
    for (let k = 0; k <= 32; k++)
      width = Math.max(width, nearestOnChain(before.chain, pointAt(s, k / 32)).distance);
  }
  return { edge: edge.id, chain, area: signedArea(chain), width };
}

/** Closed: along the treated edge, back along the seam as cut. */
function regionOf(edge: Edge, before: Measured): Chain | undefined {
  const start = chainStart(edge.chain);
  const end = chainEnd(edge.chain);
  const cut = stretch(before, before.nearest(start), before.nearest(end));
  if (cut === undefined) return undefined;
  // The treated edge keeps the clockwise sense: what lies between it and the cut seam on the outer side was added.
  const region: Segment[] = [...edge.chain];
  close(region, end, chainEnd(cut));
  for (let i = cut.length - 1; i >= 0; i--) region.push(reverse(cut[i]!));
  close(region, chainStart(cut), start);
  return region;
}

/** Adds the straight way from p to q, unless they are one place. */
function close(region: Segment[], p: Point, q: Point): void {
  if (distance(p, q) > LEAST) region.push(line(p, q));
}

/** The stretch of the closed chain from one length on to another, mm, over its start if need be. */
function stretch(c: Measured, from: number, to: number): Chain | undefined {
  if (Math.abs(from - to) <= LEAST) return undefined;
  if (from < to) return c.stretch(from, to);
  const all = c.length;
  const tail = all - from > LEAST ? c.stretch(from, all) : [];
  const head = to > LEAST ? c.stretch(0, to) : [];
  const both = [...tail, ...head];
  return both.length > 0 ? both : undefined;
}
