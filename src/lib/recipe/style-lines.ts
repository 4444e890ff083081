import { nearestOnChain } from '../geometry/nearest.ts';
import type { Chain, Point } from '../geometry/types.ts';
import { findEdge, outlineOf } from '../pattern/outline.ts';
import { addLine, findLine } from '../pattern/style-line.ts';
import type { Piece } from '../pattern/types.ts';
import type { Open } from '../pattern/with.ts';
import { resolveAnchor } from './anchors.ts';
import { connectors } from './late-connectors.ts';
import { lineNotches } from './late-notches.ts';
import { uncutFront, withDrawn } from './lines.ts';
import { refused, withPieces } from './pieces.ts';
import type { Anchor, Applied, DrawnLine, Work } from './types.ts';

/** An end that was not snapped still lies on an edge when it is this near to one, mm; as `addLine` has it. */
const ON_EDGE = 1e-4;

/** What the cuts, turns and treatments to come are called. */
const RESERVED = /^(connector|taped|bridge|freed)-|^gap\//;

/** What is made of the points of a line. `points` are those that the line is shaped by later on, mm. */
type Drawing = (points: readonly Point[]) => { readonly chain: Chain } & Pick<DrawnLine, 'points' | 'kinks'>;

/**
 * Draws a style line, or draws it anew: its notches and connectors then stay at their fractions of its length (one that is square to it stays
 * so), and a connector that no longer can be drawn is left out. The first and last anchor are the line's ends.
 */
export function layStyleLine(work: Work, line: string, anchors: readonly Anchor[], draw: Drawing): Applied {
  const paper = uncutFront(work);
  if ('refused' in paper) return paper;
  const points: Point[] = [];
  for (const a of anchors) {
    const point = resolveAnchor(work, a, 'front');
    if (point === undefined) return refused('no-such-place', { point: points.length + 1 });
    points.push(point);
  }
  const was = findLine(paper.front, line)?.line;
  if (RESERVED.test(line)) return refused('name-taken', { line });
  const taken = was === undefined ? findEdge(paper.front, line) !== undefined : was.kind !== 'style-line';
  if (taken) return refused('name-taken', { line });

  const drawing = draw(points);
  const added = addLine(paper.front, line, drawing.chain);
  if ('refused' in added) return added;
  let front = added.ok;
  const { chain, origin } = findLine(front, line)!.line;
  const ends = [
    endOn(front, anchors[0]!, points[0]!),
    endOn(front, anchors.at(-1)!, points.at(-1)!),
  ] as const;
  for (const notch of was?.notches ?? []) {
    const at = (notch.at / was!.origin.to) * origin.to;
    const marked = lineNotches.mark!(front, line, { ...notch, at: Math.min(at, origin.to) });
    if ('ok' in marked) front = marked.ok;
  }
  const feet = work.lines.find((l) => l.id === line)?.feet ?? {};
  const drawn: Open<DrawnLine> = {
    id: line,
    kind: undefined,
    chain,
    points: drawing.points,
    kinks: drawing.kinks,
    ends,
    feet: {},
  };
  let next = withDrawn(withPieces(work, 'front', front), drawn);
  for (const dart of Object.keys(feet)) {
    const { at, square } = feet[dart]!;
    const again = connectors.at!(next, dart, line, Math.min(1, at / was!.origin.to), square);
    if ('ok' in again) next = again.ok;
  }
  return { work: next };
}

/** Id of the outline edge on which an end of the line lies. */
function endOn(front: Piece, anchor: Anchor, point: Point): string | undefined {
  const outline = outlineOf(front);
  if ('on' in anchor && outline.some((edge) => edge.id === anchor.on)) return anchor.on;
  return outline.find((edge) => nearestOnChain(edge.chain, point).distance <= ON_EDGE)?.id;
}
