import type { Chain, Point } from '../geometry/types.ts';
import type { Edge, Piece } from './types.ts';
import { chainEnd, chainStart } from '../geometry/chain.ts';
import { line } from '../geometry/segment.ts';
import { runsBackwards } from './cut.ts';
import { edgeLength } from './edge-length.ts';
import { Measured } from './measured.ts';
import { tracedLeg } from './traced-leg.ts';
import { withEdge } from './with.ts';

/** A style line as it was drawn, with the tips and feet of its connectors by dart. */
export interface OverlaidLine {
  readonly id: string;
  readonly chain: Chain;
  readonly feet: Readonly<Record<string, { readonly foot: Point; readonly tip: Point }>>;
}

/** An edge of a final outline and the stretch of the block or of a drawn line that it came from. */
export interface Traced {
  readonly edge: Edge;
  /** The edge's chain runs against that stretch. */
  readonly backwards: boolean;
  /** Where the edge begins and ends, in the direction of that stretch. */
  readonly start: Point;
  readonly end: Point;
  /** undefined for an edge that has no counterpart. */
  readonly block: Chain | undefined;
  /** Where the far side was redrawn since, only this end of the stretch is the same point: the block's dart is the sewn one. */
  readonly outerEnd: 'start' | 'end' | undefined;
}

/** Whether a treatment drew the edge anew: its length is no longer that of the stretch it stands for. */
export const isRedrawn = (e: Edge): boolean =>
  e.id.startsWith('bridge-') || Math.abs(edgeLength(e) - (e.origin.to - e.origin.from)) > 1e-6;

/** The block with the lines drawn on it. Each edge is looked up once, each line measured once. */
export class Ground {
  readonly opened: Piece;
  readonly lines: readonly OverlaidLine[];
  /** The edges that were looked up, and what was found. */
  private readonly edges: Edge[] = [];
  private readonly known: Traced[] = [];
  /** The same for edges of treated outlines. */
  private readonly ends: Edge[] = [];
  private readonly finals: (Traced | undefined)[] = [];
  private readonly measured: Measured[] = [];

  constructor(opened: Piece, lines: readonly OverlaidLine[]) {
    this.opened = opened;
    this.lines = lines;
  }

  /** Where an edge came from. */
  trace(edge: Edge): Traced {
    const at = this.edges.indexOf(edge);
    if (at >= 0) return this.known[at]!;
    // What was parted along a dart lay on the block as the dart's leg.
    const own = edge.leg === undefined ? edge : withEdge(edge.leg, { chain: edge.chain });
    const backwards = runsBackwards(own);
    const isLeg = own.role === 'dart-leg';
    const leg = isLeg ? tracedLeg(own, this.opened, this.lines, this.foot(own.dart)?.tip) : undefined;
    const block = isLeg ? leg?.block : this.stretchOf(own);
    const first = chainStart(edge.chain);
    const last = chainEnd(edge.chain);
    const start = backwards ? last : first;
    const end = backwards ? first : last;
    const traced: Traced = { edge, backwards, start, end, block, outerEnd: leg?.outerEnd };
    this.edges.push(edge);
    this.known.push(traced);
    return traced;
  }

  /** Where an edge of a treated outline came from; undefined for one that the treatment drew anew. */
  traceFinal(edge: Edge): Traced | undefined {
    const at = this.ends.indexOf(edge);
    if (at >= 0) return this.finals[at];
    const traced = isRedrawn(edge) ? undefined : this.trace(edge);
    this.ends.push(edge);
    this.finals.push(traced);
    return traced;
  }

  private stretchOf(e: Edge): Chain | undefined {
    if (e.role === 'connector') {
      const foot = this.foot(e.dart);
      return foot && [line(foot.tip, foot.foot)];
    }
    const { edge, from, to } = e.origin;
    if (e.role === 'style-line') {
      for (const drawn of this.lines)
        if (drawn.id === edge) return this.measure(drawn.chain).stretch(from, to);
      return undefined;
    }
    const parent = this.edgeOf(edge);
    if (parent === undefined) return undefined;
    const { chain } = parent;
    return from <= 1e-9 && to >= parent.origin.to - 1e-9 ? chain : this.measure(chain).stretch(from, to);
  }

  private edgeOf(id: string): Edge | undefined {
    for (const part of this.opened.parts) for (const e of part.edges) if (e.id === id) return e;
    return undefined;
  }

  private foot(dart: string | undefined): { readonly foot: Point; readonly tip: Point } | undefined {
    if (dart === undefined) return undefined;
    for (const l of this.lines) if (Object.hasOwn(l.feet, dart)) return l.feet[dart];
    return undefined;
  }

  private measure(chain: Chain): Measured {
    for (const known of this.measured) if (known.chain === chain) return known;
    const measured = new Measured(chain);
    this.measured.push(measured);
    return measured;
  }
}

// The same block is overlaid by every piece cut from it, and most edges stay as they are: what the last block told is kept.
let last: Ground | undefined;

/** The block with the lines that were drawn on it, to trace edges back to. */
export function groundOf(opened: Piece, lines: readonly OverlaidLine[]): Ground {
  if (last === undefined || last.opened !== opened || last.lines !== lines) last = new Ground(opened, lines);
  return last;
}
