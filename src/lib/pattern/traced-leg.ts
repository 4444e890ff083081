import type { Chain, Point } from '../geometry/types.ts';
import type { Edge, Piece } from './types.ts';
import { distance } from '../geometry/point.ts';
import { line } from '../geometry/segment.ts';
import { chainEnd, chainStart } from '../geometry/chain.ts';
import { edgeLength } from './edge-length.ts';
import { findEdge, landmark, legIds } from './outline.ts';

/** How far (mm) a leg may be longer or shorter than what it is taken for. */
const ALIKE = 1e-6;

/** What a dart leg came from: see `Traced`. */
export interface TracedLeg {
  readonly block: Chain;
  readonly outerEnd: 'start' | 'end' | undefined;
}

/**
 * Where a dart's leg came from, on the opened block and on the lines drawn on it. The bank of a slash: its line. A leg of the block's dart:
 * the leg as it is there while it is still the sewn one; else the line from its outer end to where the learner drew it to, which
 * is `tip` where that is known, or the bust point or the end of a drawn line that is as far away as the leg is long; where there
 * is none, only the outer end is the same point. undefined for a leg that has no counterpart.
 */
export function tracedLeg(
  e: Edge,
  opened: Piece,
  lines: readonly { readonly id: string; readonly chain: Chain }[],
  tip: Point | undefined,
): TracedLeg | undefined {
  const from = e.origin.edge;
  if (from !== e.id) {
    const drawn = lines.find((l) => l.id === from);
    return drawn && { block: drawn.chain, outerEnd: undefined };
  }
  const parent = findEdge(opened, from);
  const dart = opened.darts.find((d) => d.upper === from || d.lower === from);
  if (parent === undefined || dart === undefined) return undefined;
  const into = legIds(dart)[0] === from;
  const outer = into ? chainStart(parent.chain) : chainEnd(parent.chain);
  const to = (p: Point): TracedLeg => ({
    block: [into ? line(outer, p) : line(p, outer)],
    outerEnd: undefined,
  });
  if (tip !== undefined) return to(tip);
  const length = edgeLength(e);
  if (Math.abs(length - edgeLength(parent)) <= ALIKE) return { block: parent.chain, outerEnd: undefined };
  const bust = landmark(opened, dart.bustPoint);
  const ends = [...(bust === undefined ? [] : [bust]), ...lines.map((l) => chainEnd(l.chain))];
  const reached = ends.find((p) => Math.abs(distance(outer, p) - length) <= ALIKE);
  return reached === undefined ? { block: parent.chain, outerEnd: into ? 'start' : 'end' } : to(reached);
}
