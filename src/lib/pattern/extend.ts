import type { Box, Chain, Line, Point, Segment } from '../geometry/types.ts';
import type { Dart, Part, Piece } from './types.ts';
import { distance, samePoint, sub } from '../geometry/point.ts';
import { chainEnd, chainLength, chainStart } from '../geometry/chain.ts';
import { subchain } from '../geometry/subchain.ts';
import { hullBox, line } from '../geometry/segment.ts';
import { lineMeetings } from '../geometry/meet-line.ts';
import { angleBetween } from '../geometry/trig.ts';
import { clearOf } from './clear.ts';
import { isFinished } from './finished.ts';
import { edgeOn, findDart, legIds, partOf } from './outline.ts';
import { type Outcome, done, refuse } from './outcome.ts';
import { openPart, openPiece, withEdge, withLines } from './with.ts';
import { withDart } from './with-marks.ts';

/** How near (mm) a crossing may lie to a corner that the legs share with their neighbours. */
const TOUCH = 1e-6;

/** The part with both legs of the dart drawn to `tip`; their outer ends stay. */
export function withTip(part: Part, dart: Dart, tip: Point): Part {
  const [into, outOf] = legIds(dart);
  const next = openPart(part);
  next.edges = part.edges.map((e) => {
    if (e.id !== into && e.id !== outOf) return e;
    const leg = e.id === into ? line(chainStart(e.chain), tip) : line(tip, chainEnd(e.chain));
    return withEdge(e, { chain: [leg], origin: { edge: e.id, from: 0, to: distance(leg.a, leg.d) } });
  });
  return next;
}

/**
 * Draws both legs of a dart to `to`; the dart becomes a working dart with the angle at that point. It may end in the very tip of another
 * dart: the sheet then touches itself there. Refusals:
 * `no-such-dart`; `already-finished`; `dart-already-cut` once its legs lie on two sheets; `dart-leaves-piece` when a leg would cross the outline;
 * `dart-meets-line` when it would cross a drawn line.
 */
export function extendDart(piece: Piece, dartId: string, to: Point): Outcome<Piece> {
  const dart = findDart(piece, dartId);
  if (dart === undefined) return refuse('no-such-dart', { dart: dartId });
  if (isFinished(piece)) return refuse('already-finished', { dart: dartId });
  const [into, outOf] = legIds(dart);
  const part = partOf(piece, into);
  const other = part && edgeOn(part, outOf);
  if (part === undefined || other === undefined) return refuse('dart-already-cut', { dart: dartId });
  const from = chainStart(edgeOn(part, into)!.chain);
  const end = chainEnd(other.chain);
  if (distance(from, to) <= TOUCH || distance(end, to) <= TOUCH)
    return refuse('dart-leaves-piece', { dart: dartId });

  const legs = [line(from, to), line(to, end)] as const;
  const boxes = [hullBox(legs[0]), hullBox(legs[1])] as const;
  for (const e of part.edges) {
    if (e.id === into || e.id === outOf) continue;
    const chain = e.role === 'dart-leg' ? butFor(to, e.chain) : e.chain;
    for (const s of chain)
      if (meets(legs[0], from, boxes[0], s) || meets(legs[1], end, boxes[1], s))
        return refuse('dart-leaves-piece', { dart: dartId });
  }
  for (const l of part.lines) {
    if (l.kind === 'taped' || l.kind === 'centre-front' || l.dart === dartId) continue;
    // A slash line may end where the legs will.
    const chain = l.kind === 'slash' ? butFor(to, l.chain) : l.chain;
    for (const s of chain)
      if (meets(legs[0], from, boxes[0], s) || meets(legs[1], end, boxes[1], s))
        return refuse('dart-meets-line', { dart: dartId, line: l.id });
  }

  const residual = angleBetween(sub(from, to), sub(end, to));
  // A connector starts at the tip; drawn from the old one it has lost its footing.
  const lines = part.lines.filter((l) => l.dart !== dartId);
  const drawn = withLines(withTip(part, dart, to), lines);
  const next = openPiece(piece);
  next.parts = piece.parts.map((p) => (p === part ? drawn : p));
  next.darts = piece.darts.map((d) => (d === dart ? withDart(d, { state: 'working', residual }) : d));
  return done(next);
}

/** Whether a leg meets a segment elsewhere than in its own outer end `end`; `box` holds the leg. */
function meets(leg: Line, end: Point, box: Box, s: Segment): boolean {
  if (clearOf(s, box, TOUCH)) return false;
  for (const m of lineMeetings(leg, s)) if (distance(m.point, end) > TOUCH) return true;
  return false;
}

/** How much of another dart's leg, or of a slash line, next to a tip that both share is left out when looking for meetings, mm. */
const AT_TIP = 1e-3;

/** A leg or line that ends in the very point `tip` without its last stretch; any other as it is. */
function butFor(tip: Point, leg: Chain): Chain {
  const ends = samePoint(chainEnd(leg), tip);
  if (!ends && !samePoint(chainStart(leg), tip)) return leg;
  const length = chainLength(leg);
  if (length <= AT_TIP) return leg;
  return ends ? subchain(leg, 0, length - AT_TIP) : subchain(leg, AT_TIP, length);
}
