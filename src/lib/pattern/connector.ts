import type { Chain, Place } from '../geometry/types.ts';
import type { InnerLine, Piece } from './types.ts';
import { distance } from '../geometry/point.ts';
import { hullBox, line, splitAt } from '../geometry/segment.ts';
import { chainEnd, placeAtLength } from '../geometry/chain.ts';
import { intersectSegments } from '../geometry/intersect.ts';
import { clearOf } from './clear.ts';
import { boundaries, pointAtBoundary } from './line-cut.ts';
import { endAt, findDart, legIds, startAt } from './outline.ts';
import { type Outcome, done, refuse } from './outcome.ts';
import { withLine, withPart, withPiece } from './with.ts';

/** Meetings this near (mm) to an end of the connector are the end itself. */
const AT_END = 1e-6;

export const connectorId = (dart: string): string => `connector-${dart}`;

/** The chain with a joint at a place (where it has none yet). */
function jointed(chain: Chain, at: Place): Chain {
  if (at.t === 0 || at.t === 1) return chain;
  const [a, b] = splitAt(chain[at.segment]!, at.t);
  const first = endAt([a], at.point);
  const second = startAt([b], at.point);
  return [...chain.slice(0, at.segment), ...first, ...second, ...chain.slice(at.segment + 1)];
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
  const part = piece.parts.find((p) => p.edges.some((e) => e.id === into));
  if (part === undefined || !part.edges.some((e) => e.id === outOf))
    return refuse('dart-already-cut', { dart: dartId });
  const tip = chainEnd(part.edges.find((e) => e.id === into)!.chain);
  const own = connectorId(dartId);
  const at = boundaries(piece, lineId, own).find((mm) => Math.abs(mm - wanted) <= AT_END) ?? wanted;
  const stretches = part.lines.filter((l) => l.id === lineId && l.kind === 'style-line');
  const style = stretches.find((l) => at >= l.origin.from && at <= l.origin.to);
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
  const lines = part.lines
    .filter((l) => l.id !== id)
    .map((l) => (l === style && joint === undefined ? withLine(l, { chain: jointed(l.chain, place) }) : l));
  const drawn = withPart(part, { lines: [...lines, connector] });
  return done(withPiece(piece, { parts: piece.parts.map((p) => (p === part ? drawn : p)) }));
}
