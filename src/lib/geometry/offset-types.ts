import type { Chain, Point } from './types.ts';

/** One edge of a closed outline on its seam line, with the width of its allowance in mm (0 for a bound edge). */
export interface OffsetEdge {
  readonly chain: Chain;
  readonly width: number;
}

/**
 * How the allowance ends at a corner; `first` names the edge that is sewn (and pressed open) first.
 * - mitre: both cut lines run on along their end tangents until they meet; squared off beyond MITRE_LIMIT.
 * - square: the first edge's allowance ends square to it, at the point where its seam line meets the other's cut line.
 * - reflect: from that point the end follows the mirror image of the other's cut line in the first edge's seam line.
 * - step: each cut line keeps its width up to the corner's bisector; the step runs along the bisector.
 */
export type CornerForm =
  | { readonly kind: 'mitre' }
  | { readonly kind: 'square'; readonly first: 'before' | 'after' }
  | { readonly kind: 'reflect'; readonly first: 'before' | 'after' }
  | { readonly kind: 'step' };

/**
 * What the allowance did that was not asked for; nothing here is an error.
 * - stepped: no mitre is possible at this corner, a step was made.
 * - squaredOff: the mitre would reach too far and was cut off.
 * - mitred: the square or reflected end is not possible here, a mitre was made.
 * - tightCurve: the edge is more tightly hollow than its allowance is wide; the cut line has a corner there.
 * - swallowed: nothing is left of this edge's cut line; its neighbours' meet before it.
 * - overlap: the allowances of edge and other run into each other (a narrow notch); the cut line bridges them.
 */
export interface OffsetNote {
  readonly kind: 'stepped' | 'squaredOff' | 'mitred' | 'tightCurve' | 'swallowed' | 'overlap';
  /** Index of the edge, or of the corner after it. */
  readonly edge: number;
  readonly other?: number;
  readonly at: Point;
}

export interface Offset {
  /** The whole cut line, closed, clockwise on the screen: edges[0], corners[0], edges[1], corners[1], ... */
  readonly cut: Chain;
  /** The part of the cut line parallel to each edge (a straight edge's runs on to the corner); may be empty. */
  readonly edges: readonly Chain[];
  /** What joins the cut line of edge i to that of the next edge; may be empty. */
  readonly corners: readonly Chain[];
  readonly notes: readonly OffsetNote[];
}

/** A mitre farther from the corner than this many times the wider allowance is squared off at that allowance's width. */
export const MITRE_LIMIT = 4;
