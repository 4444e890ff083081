import { chainLength, pointAtLength } from '../../geometry/chain.ts';
import { nearestOnChain } from '../../geometry/nearest.ts';
import { distance } from '../../geometry/point.ts';
import type { Point } from '../../geometry/types.ts';
import { anchorInside } from '../../recipe/anchors.ts';
import type { Anchor, Work } from '../../recipe/types.ts';
import type { Edge, InnerLine, Part, Piece } from '../../pattern/types.ts';
import { tipsOn } from '../../pattern/slash-line.ts';
import type { Reading } from '../tool-spec.ts';

/** Points this near are one, mm. */
const SAME = 1e-6;

/** A place on an edge where a slash may begin: every edge of the outline but the legs of darts. */
export interface EdgePlace {
  readonly part: Part;
  readonly edge: Edge;
  readonly point: Point;
  /** mm from the start of the edge, and how long it is. */
  readonly along: number;
  readonly whole: number;
  /** mm from the point that was asked about. */
  readonly off: number;
}

/** The edges of a front on which a slash may begin, with their sheet. */
export const slashEdges = (front: Piece): readonly { readonly part: Part; readonly edge: Edge }[] =>
  front.parts.flatMap((part) =>
    part.edges.flatMap((edge) => (edge.role === 'dart-leg' ? [] : [{ part, edge }])),
  );

/** The place on such an edge that is nearest to a point; `only`: on the edge of that id. */
export function edgePlace(front: Piece, to: Point, only?: string): EdgePlace | undefined {
  let best: EdgePlace | undefined;
  for (const { part, edge } of slashEdges(front)) {
    if (only !== undefined && edge.id !== only) continue;
    const near = nearestOnChain(edge.chain, to);
    if (best && near.distance >= best.off) continue;
    const whole = chainLength(edge.chain);
    best = { part, edge, point: near.point, along: near.length, whole, off: near.distance };
  }
  return best;
}

/** Of several slashes that were given no name of their own, and so only a number tells apart, the edges they begin on, by slash. */
export function numberedOn(work: Work, ids: readonly string[]): Readonly<Record<string, string>> {
  const nameless = work.lines.filter(({ id }) => /^(slash|new)(-\d+)?$/.test(id));
  if (nameless.length < 2) return {};
  return Object.fromEntries(
    nameless.flatMap(({ id, ends: [edge] }) => (edge !== undefined && ids.includes(id) ? [[id, edge]] : [])),
  );
}

/** A dart by its id, and by its edge where only a number tells it from the others: `slash-2@right/neckline`. */
export function withEdge(work: Work, id: string): string {
  const edge = numberedOn(work, [id])[id];
  return edge === undefined ? id : `${id}@${edge}`;
}

/** A place on an edge as an anchor. */
export const anchorAt = ({ edge, along, whole }: EdgePlace): Anchor => ({
  on: edge.id,
  at: Math.min(1, Math.max(0, along / whole)),
});

/** Where slashes are meant to end: a bust point, or the tip of a working dart that was drawn elsewhere. */
export interface SlashEnd {
  readonly id: string;
  readonly point: Point;
  readonly anchor: Anchor;
  /** The landmark that it is; undefined for a tip beside the bust point. */
  readonly landmark: string | undefined;
  readonly dart: string | undefined;
}

/** The ends that a slash may have on some sheets, each point once. */
export function slashEnds(front: Piece, parts: readonly Part[] = front.parts): readonly SlashEnd[] {
  const ends: SlashEnd[] = [];
  const add = (end: SlashEnd): void => {
    if (!ends.some((one) => distance(one.point, end.point) < SAME)) ends.push(end);
  };
  for (const part of parts)
    for (const [id, point] of Object.entries(part.landmarks))
      if (id.endsWith('bust-point'))
        add({ id: `end:${id}`, point, anchor: { landmark: id }, landmark: id, dart: undefined });
  for (const part of parts)
    for (const { dart, tip } of tipsOn(front, part)) {
      const bust = part.landmarks[dart.bustPoint];
      if (dart.state !== 'working' || !bust) continue;
      const anchor = { landmark: dart.bustPoint, dx: tip.x - bust.x, dy: tip.y - bust.y };
      add({ id: `end:${dart.id}`, point: tip, anchor, landmark: undefined, dart: dart.id });
    }
  return ends;
}

/** A slash line that is drawn and not cut, and where it runs. */
export interface Uncut {
  readonly id: string;
  readonly part: Part;
  readonly line: InnerLine;
  readonly from: Point;
  readonly via: Point | undefined;
  readonly to: Point;
}

export const uncutSlashes = (front: Piece): readonly Uncut[] =>
  front.parts.flatMap((part) =>
    part.lines.flatMap((line): Uncut[] => {
      if (line.kind !== 'slash') return [];
      const { chain } = line;
      const via = chain.length > 1 ? chain[0]!.d : undefined;
      return [{ id: line.id, part, line, from: chain[0]!.a, via, to: chain.at(-1)!.d }];
    }),
  );

/**
 * The next name of a new dart that nothing on the table has: `slash`, `slash-1`, `slash-2` ..., or `new`, `new-1` ... where no paper is
 * cut for it.
 */
export function nextSlash(work: Work, first: 'slash' | 'new' = 'slash'): string {
  const used = new Set([
    ...work.lines.map(({ id }) => id),
    ...work.pieces.flatMap((piece) => piece.darts.map(({ id }) => id)),
  ]);
  let n = 0;
  const name = (base: string = first): string => (n === 0 ? base : `${base}-${n + 1}`);
  // Opened, both are called new darts: no two with the same number.
  while (used.has(name('slash')) || used.has(name('new'))) n++;
  return name();
}

/** Where a slash ends, as an anchor: in an end that is there, else wherever the point is. */
export function endAnchor(work: Work, front: Piece, part: Part | undefined, point: Point): Anchor {
  const ends = slashEnds(front, part ? [part] : front.parts);
  return ends.find((end) => distance(end.point, point) < 0.05)?.anchor ?? anchorInside(work, 'front', point);
}

/** How far a place on an edge is from the edge's two ends, told in the middle of each stretch. */
export function placeReadings(piece: string, { part, edge, along, whole }: EdgePlace): Reading[] {
  const ends = [edge.chain[0]!.a, edge.chain.at(-1)!.d];
  return [along, whole - along].flatMap((value, i): Reading[] => {
    const end = ends[i]!;
    const named = Object.entries(part.landmarks).find(([, point]) => distance(point, end) < 0.01);
    const from = pointAtLength(edge.chain, i === 0 ? along / 2 : (along + whole) / 2);
    return [{ id: `from-end:${named?.[0] ?? ''}`, unit: 'mm', value, piece, from }];
  });
}
