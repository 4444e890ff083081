import { contains } from '../geometry/outline.ts';
import { distance, sub, unit, add, scale } from '../geometry/point.ts';
import { intersectChains } from '../geometry/intersect.ts';
import { nearestOnChain } from '../geometry/nearest.ts';
import { line } from '../geometry/segment.ts';
import type { Point } from '../geometry/types.ts';
import { chainOf, outlineOf } from '../pattern/outline.ts';
import type { Edge, Piece } from '../pattern/types.ts';

/** A place on an edge of the outline. */
export interface OnEdge {
  readonly point: Point;
  readonly edge: Edge;
}

/** A stroke between its ends, and the places on the edges where they were put; an end that no edge is near to has none. */
export interface Laid {
  readonly stroke: readonly Point[];
  readonly start: OnEdge | undefined;
  readonly end: OnEdge | undefined;
}

/** The direction at an end is taken over this much of the stroke, mm. */
const LOOK = 15;
/** A stroke that leaves the paper again within so many times the reach of where it was begun has begun only then. */
const WAVERS = 4;

/**
 * A stroke on a piece with its ends on edges: what runs over the paper's edge is cut off there, and an end that stops up to `reach`
 * mm short of one goes on to it, straight if that hits it within twice the reach.
 */
export function laidOn(piece: Piece, stroke: readonly Point[], reach: number): Laid {
  const edges = outlineOf(piece);
  const one = withStart(edges, stroke, reach);
  const other = withStart(edges, [...one.stroke].reverse(), reach);
  return { stroke: [...other.stroke].reverse(), start: one.start, end: other.start };
}

function withStart(
  edges: readonly Edge[],
  stroke: readonly Point[],
  reach: number,
): { readonly stroke: readonly Point[]; readonly start: OnEdge | undefined } {
  const outline = chainOf(edges);
  const out = (p: Point): boolean => contains(outline, p) === 'outside';
  let first = stroke.findIndex((p) => !out(p));
  if (first < 0) return { stroke, start: undefined };
  // A hand that begins on the edge may waver across it more than once.
  for (let i = first; i < stroke.length && distance(stroke[i]!, stroke[0]!) <= WAVERS * reach; i++)
    if (out(stroke[i]!)) first = i + 1;
  if (first >= stroke.length) return { stroke, start: undefined };
  const p = stroke[first]!;
  if (first > 0) {
    const start = crossing(edges, p, stroke[first - 1]!);
    return start ? { stroke: [start.point, ...stroke.slice(first)], start } : { stroke, start };
  }
  const near = nearest(edges, p);
  if (!near || distance(near.point, p) > reach) return { stroke, start: undefined };
  const ahead = stroke.find((q) => distance(q, p) >= LOOK) ?? stroke[stroke.length - 1]!;
  const away = sub(p, ahead);
  const straight =
    away.x === 0 && away.y === 0 ? undefined : crossing(edges, p, add(p, scale(unit(away), 2 * reach)));
  const start = straight ?? near;
  return { stroke: [start.point, ...stroke], start };
}

/** Where the way from one point to another first meets an edge. */
function crossing(edges: readonly Edge[], from: Point, to: Point): OnEdge | undefined {
  let best: OnEdge | undefined;
  for (const edge of edges)
    for (const { point } of intersectChains([line(from, to)], edge.chain))
      if (!best || distance(point, from) < distance(best.point, from)) best = { point, edge };
  return best;
}

function nearest(edges: readonly Edge[], p: Point): OnEdge | undefined {
  let best: (OnEdge & { distance: number }) | undefined;
  for (const edge of edges) {
    const near = nearestOnChain(edge.chain, p);
    if (!best || near.distance < best.distance) best = { point: near.point, edge, distance: near.distance };
  }
  return best;
}
