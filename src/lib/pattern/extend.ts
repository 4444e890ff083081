import type { Chain, Point, Segment } from '../geometry/types.ts';
import type { Dart, Part, Piece } from './types.ts';
import { distance, samePoint, sub } from '../geometry/point.ts';
import { chainEnd, chainLength, chainStart, subchain } from '../geometry/chain.ts';
import { hullBox, line } from '../geometry/segment.ts';
import { intersectSegments } from '../geometry/intersect.ts';
import { angleBetween } from '../geometry/trig.ts';
import { clearOf } from './clear.ts';
import { isFinished } from './finished.ts';
import { findDart, legIds } from './outline.ts';
import { type Outcome, done, refuse } from './outcome.ts';
import { withDart, withEdge, withPart, withPiece } from './with.ts';

/** How near (mm) a crossing may lie to a corner that the legs share with their neighbours. */
const TOUCH = 1e-6;

/** The part with both legs of the dart drawn to `tip`; their outer ends stay. */
export function withTip(part: Part, dart: Dart, tip: Point): Part {
  const [into, outOf] = legIds(dart);
  return withPart(part, {
    edges: part.edges.map((e) => {
      if (e.id !== into && e.id !== outOf) return e;
      const leg = e.id === into ? line(chainStart(e.chain), tip) : line(tip, chainEnd(e.chain));
      return withEdge(e, { chain: [leg], origin: { edge: e.id, from: 0, to: distance(leg.a, leg.d) } });
    }),
  });
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
  const part = piece.parts.find((p) => p.edges.some((e) => e.id === into));
  if (part === undefined || !part.edges.some((e) => e.id === outOf))
    return refuse('dart-already-cut', { dart: dartId });
  const from = chainStart(part.edges.find((e) => e.id === into)!.chain);
  const end = chainEnd(part.edges.find((e) => e.id === outOf)!.chain);
  if (distance(from, to) <= TOUCH || distance(end, to) <= TOUCH)
    return refuse('dart-leaves-piece', { dart: dartId });

  const legs = [line(from, to), line(to, end)] as const;
  const ends = [from, end] as const;
  const boxes = [hullBox(legs[0]), hullBox(legs[1])] as const;
  /** Whether either leg meets a segment elsewhere than in its own outer end. */
  const meets = (s: Segment): boolean => {
    for (const k of [0, 1] as const) {
      if (clearOf(s, boxes[k], TOUCH)) continue;
      for (const m of intersectSegments(legs[k], s)) if (distance(m.point, ends[k]) > TOUCH) return true;
    }
    return false;
  };
  for (const e of part.edges) {
    if (e.id === into || e.id === outOf) continue;
    const chain = e.role === 'dart-leg' ? butFor(to, e.chain) : e.chain;
    for (const s of chain) if (meets(s)) return refuse('dart-leaves-piece', { dart: dartId });
  }
  for (const l of part.lines) {
    if (l.kind === 'taped' || l.kind === 'centre-front' || l.dart === dartId) continue;
    // A slash line may end where the legs will.
    const chain = l.kind === 'slash' ? butFor(to, l.chain) : l.chain;
    for (const s of chain) if (meets(s)) return refuse('dart-meets-line', { dart: dartId, line: l.id });
  }

  const residual = angleBetween(sub(from, to), sub(end, to));
  const drawn = withTip(part, dart, to);
  // A connector starts at the tip; drawn from the old one it has lost its footing.
  const lines = drawn.lines.filter((l) => l.dart !== dartId);
  return done(
    withPiece(piece, {
      parts: piece.parts.map((p) => (p === part ? withPart(drawn, { lines }) : p)),
      darts: piece.darts.map((d) => (d === dart ? withDart(d, { state: 'working' as const, residual }) : d)),
    }),
  );
}

/** How much of another dart's leg, or of a slash line, next to a tip that both share is left out when looking for meetings, mm. */
const AT_TIP = 1e-3;

/** A leg or line that ends in the very point `tip` without its last stretch; any other as it is. */
function butFor(tip: Point, leg: Chain): Chain {
  const length = chainLength(leg);
  if (length <= AT_TIP) return leg;
  if (samePoint(chainEnd(leg), tip)) return subchain(leg, 0, length - AT_TIP);
  if (samePoint(chainStart(leg), tip)) return subchain(leg, AT_TIP, length);
  return leg;
}
