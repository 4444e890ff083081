import type { Chain, Place, Point, Segment } from '../geometry/types.ts';
import type { InnerLine, Piece } from './types.ts';
import { distance } from '../geometry/point.ts';
import { hullBox, line, splitAt } from '../geometry/segment.ts';
import { chainEnd, placeAtLength } from '../geometry/chain.ts';
import { intersectSegments } from '../geometry/meet.ts';
import { clearOf } from './clear.ts';
import { boundaries, pointAtBoundary } from './line-cut.ts';
import { edgeOn, endAt, findDart, legIds, partOf, startAt } from './outline.ts';
import { type Outcome, done, refuse } from './outcome.ts';
import { withLines, withParts } from './with.ts';
import { withLine } from './with-marks.ts';

/** Meetings this near (mm) to an end of the connector are the end itself. */
const AT_END = 1e-6;

export const connectorId = (dart: string): string => `connector-${dart}`;

/** The tip of a dart whose legs lie on one part of the paper; undefined once they are cut apart, or where there is none. */
export function dartTip(piece: Piece, dartId: string): Point | undefined {
  const dart = findDart(piece, dartId);
  if (dart === undefined) return undefined;
  const [into, outOf] = legIds(dart);
  const part = partOf(piece, into);
  if (part === undefined || edgeOn(part, outOf) === undefined) return undefined;
  return chainEnd(edgeOn(part, into)!.chain);
}

/** The chain with a joint at a place (where it has none yet). */
function jointed(chain: Chain, at: Place): Chain {
  if (at.t === 0 || at.t === 1) return chain;
  const [a, b] = splitAt(chain[at.segment]!, at.t);
  const out: Segment[] = chain.slice();
  out.splice(at.segment, 1, endAt([a], at.point)[0]!, startAt([b], at.point)[0]!);
  return out;
}

/**
 * Draws the connector of a dart, straight from its tip to the point `wanted` mm along the line (again: in place of the old one). The
 * line gets a joint there, so that a later cut turns off in exactly that point; a foot that all but meets an end or another
 * foot is put onto it. Refusals: `no-such-dart`, `no-such-line`,
 * `dart-already-cut`, `line-already-cut` at that place, `connector-without-length`, `connector-crosses-line`,
 * `connector-leaves-piece`.
 */
export function addConnector(piece: Piece, dartId: string, lineId: string, wanted: number): Outcome<Piece> {
  const dart = findDart(piece, dartId);
  if (dart === undefined) return refuse('no-such-dart', { dart: dartId });
  const [into, outOf] = legIds(dart);
  const part = partOf(piece, into);
  if (part === undefined || edgeOn(part, outOf) === undefined)
    return refuse('dart-already-cut', { dart: dartId });
  const tip = chainEnd(edgeOn(part, into)!.chain);
  const own = connectorId(dartId);
  const at = boundaries(piece, lineId, own).find((mm) => Math.abs(mm - wanted) <= AT_END) ?? wanted;
  const style = part.lines.find(
    (l) => l.id === lineId && l.kind === 'style-line' && at >= l.origin.from && at <= l.origin.to,
  );
  if (style === undefined) {
    const cut = piece.parts.some((p) => p.edges.some((e) => e.origin.edge === lineId));
    return refuse(cut ? 'line-already-cut' : 'no-such-line', { line: lineId });
  }

  const joint = pointAtBoundary(part, style, at);
  const place = placeAtLength(style.chain, at - style.origin.from);
  const foot = joint ?? place.point;
  const length = distance(tip, foot);
  if (!(length > 1e-3)) return refuse('connector-without-length', { dart: dartId });
  const straight = line(tip, foot);
  const box = hullBox(straight);
  for (const s of style.chain) {
    if (clearOf(s, box, AT_END)) continue;
    for (const m of intersectSegments(straight, s))
      if (distance(m.point, foot) > AT_END)
        return refuse('connector-crosses-line', { dart: dartId, line: lineId });
  }
  for (const e of part.edges) {
    for (const s of e.chain) {
      if (clearOf(s, box, AT_END)) continue;
      for (const m of intersectSegments(straight, s)) {
        const atFoot =
          distance(m.point, foot) <= AT_END && (at <= style.origin.from || at >= style.origin.to);
        if (distance(m.point, tip) > AT_END && !atFoot)
          return refuse('connector-leaves-piece', { dart: dartId });
      }
    }
  }

  const id = own;
  const connector: InnerLine = {
    id,
    kind: 'connector',
    chain: [straight],
    origin: { edge: id, from: 0, to: length },
    dart: dartId,
    notches: [],
    line: lineId,
    foot: at,
    faults: undefined,
  };
  const lines = part.lines.filter((l) => l.id !== id);
  const k = joint === undefined ? lines.indexOf(style) : -1;
  if (k >= 0) lines[k] = withLine(style, { chain: jointed(style.chain, place) });
  lines.push(connector);
  const drawn = withLines(part, lines);
  return done(
    withParts(
      piece,
      piece.parts.map((p) => (p === part ? drawn : p)),
    ),
  );
}
