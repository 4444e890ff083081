import type { Chain, Isometry, Point } from '../geometry/types.ts';
import type { Edge, Part, Piece } from './types.ts';
import { distance } from '../geometry/point.ts';
import { applyTo } from '../geometry/isometry.ts';
import { line, pointAt } from '../geometry/segment.ts';
import { nearestOnChain } from '../geometry/nearest.ts';
import { chainEnd, chainStart, reverseChain, subchain } from '../geometry/chain.ts';
import { register } from '../geometry/register.ts';
import { runsBackwards } from './cut.ts';
import { edgeLength } from './edge-length.ts';
import { IDENTITY } from '../geometry/isometry.ts';

/** A style line as it was drawn, with the tips and feet of its connectors by dart. */
export interface OverlaidLine {
  readonly id: string;
  readonly chain: Chain;
  readonly feet: Readonly<Record<string, { readonly foot: Point; readonly tip: Point }>>;
}

/** How one rigid part lies on the block. */
export interface PartFit {
  readonly part: string;
  /** Lays the part on the block. */
  readonly motion: Isometry;
  /** Largest distance, mm, of the part's final outline from the stretches of block and drawn line that it came from. */
  readonly residual: number;
  /** The edge where that is. */
  readonly worst?: string;
  /** A mirror image of the part would lie better. */
  readonly mirrored: boolean;
  /** Edges of the part that have no counterpart on the block or the drawn lines. */
  readonly missing: readonly string[];
}

/** An edge of the final outline and the stretch it came from; `corners` alone where the far side of it was redrawn since. */
interface Pair {
  readonly edge: string;
  readonly own: Chain;
  readonly block: Chain;
  /** The drawn dart on the block is the sewn one: only the leg's outer end is the same point. */
  readonly outerEnd?: 'start' | 'end';
}

/**
 * Closes the piece on the block: each rigid part's final outline is registered on the corners of the edges that it came from, on the
 * opened block and on the lines as drawn (closed-form rigid least squares, no command is undone), and compared with them
 * edge by edge. Edges that a treatment made new are left to `slivers`.
 */
export function overlay(
  piece: Piece,
  opened: Piece,
  lines: readonly OverlaidLine[] = [],
): readonly PartFit[] {
  const source = sources(opened, lines);
  return piece.parts.map((part) => fit(part, finalEdges(piece, part), source));
}

/** The part's edges as they ended: those of the treated seam outline in place of those on the sheet. */
function finalEdges(piece: Piece, part: Part): readonly Edge[] {
  if (piece.seam === undefined) return part.edges;
  const own = new Set(part.edges.map((e) => e.id));
  return piece.seam.filter((e) => own.has(e.id) && !isRedrawn(e));
}

/** Whether a treatment drew the edge anew: its length is no longer that of the stretch it stands for. */
export const isRedrawn = (e: Edge): boolean =>
  e.id.startsWith('bridge-') || Math.abs(edgeLength(e) - (e.origin.to - e.origin.from)) > 1e-6;

type Source = (e: Edge) => Pair | undefined;

interface Parent {
  readonly chain: Chain;
  readonly length: number;
}

// The same block is overlaid by every piece cut from it: what the last one needed is kept.
let lastOpened: Piece | undefined;
let lastParents: ReadonlyMap<string, Parent> = new Map();

/** The opened block's edges by id. */
function parentsOn(opened: Piece): ReadonlyMap<string, Parent> {
  if (opened === lastOpened) return lastParents;
  const all = new Map<string, Parent>();
  for (const part of opened.parts)
    for (const e of part.edges) all.set(e.id, { chain: e.chain, length: e.origin.to });
  lastOpened = opened;
  lastParents = all;
  return all;
}

function sources(opened: Piece, lines: readonly OverlaidLine[]): Source {
  const block = parentsOn(opened);
  const foot = (dart: string | undefined) => {
    if (dart === undefined) return undefined;
    for (const l of lines) if (Object.hasOwn(l.feet, dart)) return l.feet[dart];
    return undefined;
  };
  return (e) => {
    const own = runsBackwards(e) ? reverseChain(e.chain) : e.chain;
    if (e.role === 'connector') {
      const f = foot(e.dart);
      return f && { edge: e.id, own, block: [line(f.tip, f.foot)] };
    }
    const { edge, from, to } = e.origin;
    if (e.role === 'style-line') {
      const drawn = lines.find((l) => l.id === edge);
      return drawn && { edge: e.id, own, block: stretch(drawn.chain, from, to) };
    }
    const parent = block.get(edge);
    if (parent === undefined) return undefined;
    if (e.role === 'dart-leg') {
      const sewn = parent.chain[0]!;
      const into = e.id.endsWith('lower') === (e.side === 'right');
      const tip = foot(e.dart)?.tip;
      if (tip === undefined)
        return { edge: e.id, own, block: parent.chain, outerEnd: into ? 'start' : 'end' };
      return { edge: e.id, own, block: [into ? line(sewn.a, tip) : line(tip, sewn.d)] };
    }
    const whole = from <= 1e-9 && to >= parent.length - 1e-9;
    return { edge: e.id, own, block: whole ? parent.chain : subchain(parent.chain, from, to) };
  };
}

// Both banks and every piece ask for the same few stretches of a drawn line: those of the last line are kept.
let lastLine: Chain | undefined;
let lastStretches: { readonly from: number; readonly to: number; readonly chain: Chain }[] = [];

/** The stretch of a drawn line between two places, mm along it. */
function stretch(line: Chain, from: number, to: number): Chain {
  if (line !== lastLine) {
    lastLine = line;
    lastStretches = [];
  }
  for (const s of lastStretches) if (s.from === from && s.to === to) return s.chain;
  const chain = subchain(line, from, to);
  lastStretches.push({ from, to, chain });
  return chain;
}

function fit(part: Part, edges: readonly Edge[], source: Source): PartFit {
  const pairs: Pair[] = [];
  const missing: string[] = [];
  const from: Point[] = [];
  const to: Point[] = [];
  for (const e of edges) {
    const pair = source(e);
    if (pair === undefined) {
      missing.push(e.id);
      continue;
    }
    pairs.push(pair);
    if (pair.outerEnd !== 'end') {
      from.push(chainStart(pair.own));
      to.push(chainStart(pair.block));
    }
    if (pair.outerEnd !== 'start') {
      from.push(chainEnd(pair.own));
      to.push(chainEnd(pair.block));
    }
  }
  if (from.length < 2) return { part: part.id, motion: IDENTITY, residual: 0, mirrored: false, missing };
  const { motion, mirrored } = register(from, to);
  let residual = 0;
  let worst: string | undefined;
  for (const pair of pairs) {
    const off = apart(pair, motion);
    if (off <= residual) continue;
    residual = off;
    worst = pair.edge;
  }
  return { part: part.id, motion, residual, mirrored, missing, ...(worst !== undefined && { worst }) };
}

/**
 * Distance of a moved edge from its counterpart, mm. With segments of the same kinds in the same order the largest distance of control
 * points bounds it (the difference of two Bézier curves lies in the hull of the differences); else it is sampled.
 */
function apart({ own, block, outerEnd }: Pair, m: Isometry): number {
  if (outerEnd === 'start') return distance(applyTo(m, chainStart(own)), chainStart(block));
  if (outerEnd === 'end') return distance(applyTo(m, chainEnd(own)), chainEnd(block));
  if (alike(own, block)) {
    const max = controlsApart(own, block, m);
    // The same curve may be divided elsewhere: then control points differ and only the curves themselves tell.
    if (max <= 1e-6) return max;
  }
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

function alike(own: Chain, block: Chain): boolean {
  if (own.length !== block.length) return false;
  for (let i = 0; i < own.length; i++) if (own[i]!.kind !== block[i]!.kind) return false;
  return true;
}

function controlsApart(own: Chain, block: Chain, m: Isometry): number {
  let max = 0;
  const note = (p: Point, q: Point): void => {
    const x = m.a * p.x + m.c * p.y + m.e - q.x;
    const y = m.b * p.x + m.d * p.y + m.f - q.y;
    const d2 = x * x + y * y;
    if (d2 > max) max = d2;
  };
  for (let i = 0; i < own.length; i++) {
    const s = own[i]!;
    const u = block[i]!;
    note(s.a, u.a);
    note(s.d, u.d);
    if (s.kind === 'line' || u.kind === 'line') continue;
    note(s.b, u.b);
    note(s.c, u.c);
  }
  return Math.sqrt(max);
}
