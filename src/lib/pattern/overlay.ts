import type { Chain, Isometry, Point, Segment } from '../geometry/types.ts';
import type { Edge, Part, Piece } from './types.ts';
import { distance } from '../geometry/point.ts';
import { applyTo, IDENTITY } from '../geometry/isometry.ts';
import { pointAt } from '../geometry/segment.ts';
import { nearestOnChain } from '../geometry/nearest.ts';
import { chainEnd, chainStart } from '../geometry/chain.ts';
import { reverseChain } from '../geometry/chain-moved.ts';
import { register } from '../geometry/register.ts';
import { edgeOn } from './outline.ts';
import { groundOf, type Ground, type OverlaidLine, type Traced } from './traced.ts';

export { isRedrawn, type OverlaidLine } from './traced.ts';

/** How one rigid part lies on the block. */
export interface PartFit {
  readonly part: string;
  /** Lays the part on the block. */
  readonly motion: Isometry;
  /** Largest distance, mm, of the part's final outline from the stretches of block and drawn line that it came from. */
  readonly residual: number;
  /** The edge where that is. */
  readonly worst: string | undefined;
  /** A mirror image of the part would lie better. */
  readonly mirrored: boolean;
  /** Edges of the part that have no counterpart on the block or the drawn lines. */
  readonly missing: readonly string[];
}

const NO_LINES: readonly OverlaidLine[] = [];

/**
 * Closes the piece on the block: each rigid part's final outline is registered on the corners of the edges that it came from, on the
 * opened block and on the lines as drawn (closed-form rigid least squares, no command is undone), and compared with them
 * edge by edge. Edges that a treatment made new are left to `slivers`.
 */
export function overlay(
  piece: Piece,
  opened: Piece,
  lines: readonly OverlaidLine[] = NO_LINES,
): readonly PartFit[] {
  const ground = groundOf(opened, lines);
  const sheets = piece.seam === undefined ? sheetEdges(piece, ground) : finalEdges(piece, piece.seam, ground);
  const fits: PartFit[] = [];
  for (let i = 0; i < sheets.length; i++) fits.push(fit(piece.parts[i]!.id, sheets[i]!));
  return fits;
}

/** The edges of each sheet as it was cut. */
function sheetEdges(piece: Piece, ground: Ground): readonly Traced[][] {
  const sheets: Traced[][] = [];
  for (const part of piece.parts) {
    const traced: Traced[] = [];
    for (const e of part.edges) traced.push(ground.trace(e));
    sheets.push(traced);
  }
  return sheets;
}

/** Sheet by sheet what is left of it in the treated seam outline: a treated piece ends there, whatever is drawn on its sheets. */
function finalEdges(piece: Piece, seam: readonly Edge[], ground: Ground): readonly Traced[][] {
  const { parts } = piece;
  const sheets: Traced[][] = [];
  for (let i = 0; i < parts.length; i++) sheets.push([]);
  for (const e of seam) {
    const traced = ground.traceFinal(e);
    if (traced !== undefined && !isSewnLeg(piece, e)) sheets[sheetOf(parts, e)]?.push(traced);
  }
  // A sewn dart is drawn on the paper; what was cut is the working dart, whose legs are the sheets' own edges.
  if (piece.finished !== undefined) {
    for (let i = 0; i < parts.length; i++)
      for (const e of parts[i]!.edges) if (isSewnLeg(piece, e)) sheets[i]!.push(ground.trace(e));
  }
  return sheets;
}

/** Whether an edge is a leg of a dart that was drawn to its sewn point. */
const isSewnLeg = (piece: Piece, e: Edge): boolean =>
  e.role === 'dart-leg' && piece.finished?.some((f) => f.dart === e.dart) === true;

/** Which sheet an edge of the seam outline lies on, or −1: most edges are the sheet's own, the others keep their name. */
function sheetOf(parts: readonly Part[], e: Edge): number {
  for (let i = 0; i < parts.length; i++) if (parts[i]!.edges.includes(e)) return i;
  for (let i = 0; i < parts.length; i++) if (edgeOn(parts[i]!, e.id) !== undefined) return i;
  return -1;
}

function fit(part: string, edges: readonly Traced[]): PartFit {
  const missing: string[] = [];
  const from: Point[] = [];
  const to: Point[] = [];
  for (const { edge, start, end, block, outerEnd } of edges) {
    if (block === undefined) {
      missing.push(edge.id);
      continue;
    }
    if (outerEnd !== 'end') {
      from.push(start);
      to.push(chainStart(block));
    }
    if (outerEnd !== 'start') {
      from.push(end);
      to.push(chainEnd(block));
    }
  }
  if (from.length < 2)
    return { part, motion: IDENTITY, residual: 0, worst: undefined, mirrored: false, missing };
  const { motion, mirrored } = register(from, to);
  let residual = 0;
  let worst: string | undefined;
  for (const traced of edges) {
    if (traced.block === undefined) continue;
    const off = apart(traced, traced.block, motion);
    if (off <= residual) continue;
    residual = off;
    worst = traced.edge.id;
  }
  return { part, motion, residual, worst, mirrored, missing };
}

/**
 * Distance of a moved edge from its counterpart, mm. With segments of the same kinds in the same order the largest distance of control
 * points bounds it (the difference of two Bézier curves lies in the hull of the differences); else it is sampled.
 */
function apart({ edge, backwards, start, end, outerEnd }: Traced, block: Chain, m: Isometry): number {
  if (outerEnd === 'start') return Math.sqrt(apart2(start, chainStart(block), m));
  if (outerEnd === 'end') return Math.sqrt(apart2(end, chainEnd(block), m));
  const { chain } = edge;
  const max = controlsApart(chain, backwards, block, m);
  // The same curve may be divided elsewhere: then control points differ and only the curves themselves tell.
  return max <= 1e-6 ? max : sampledApart(backwards ? reverseChain(chain) : chain, block, m);
}

function sampledApart(own: Chain, block: Chain, m: Isometry): number {
  let max = Math.max(
    distance(applyTo(m, chainStart(own)), chainStart(block)),
    distance(applyTo(m, chainEnd(own)), chainEnd(block)),
  );
  for (const s of own) {
    for (let k = 0; k <= 16; k++) {
      const d = nearestOnChain(block, applyTo(m, pointAt(s, k / 16))).distance;
      if (d > max) max = d;
    }
  }
  return max;
}

/** Largest distance of control points; Infinity where they do not correspond one by one. */
function controlsApart(own: Chain, backwards: boolean, block: Chain, m: Isometry): number {
  const n = own.length;
  if (n !== block.length) return Infinity;
  let max = 0;
  for (let i = 0; i < n; i++) {
    const s = own[i]!;
    const u = block[backwards ? n - 1 - i : i]!;
    if (s.kind !== u.kind) return Infinity;
    max = Math.max(max, backwards ? against(s, u, m) : along(s, u, m));
  }
  return Math.sqrt(max);
}

/** Largest square of the distance of control points that correspond in order. */
function along(s: Segment, u: Segment, m: Isometry): number {
  const ends = Math.max(apart2(s.a, u.a, m), apart2(s.d, u.d, m));
  if (s.kind === 'line' || u.kind === 'line') return ends;
  return Math.max(ends, apart2(s.b, u.b, m), apart2(s.c, u.c, m));
}

/** The same with the segment run the other way. */
function against(s: Segment, u: Segment, m: Isometry): number {
  const ends = Math.max(apart2(s.a, u.d, m), apart2(s.d, u.a, m));
  if (s.kind === 'line' || u.kind === 'line') return ends;
  return Math.max(ends, apart2(s.b, u.c, m), apart2(s.c, u.b, m));
}

/** Square of the distance of a moved point from another, mm². */
function apart2(p: Point, q: Point, m: Isometry): number {
  const x = m.a * p.x + m.c * p.y + m.e - q.x;
  const y = m.b * p.x + m.d * p.y + m.f - q.y;
  return x * x + y * y;
}
