import type { Point } from '../geometry/types.ts';
import type { Dart, Edge, Piece } from './types.ts';
import { add, cross, distance, lerp, scale, sub } from '../geometry/point.ts';
import { chainEnd, chainStart } from '../geometry/chain.ts';
import { line } from '../geometry/segment.ts';
import { PI, angleBetween } from '../geometry/trig.ts';
import { finishedDart, mouthOf, redrawn, withFinished, withMouth, withoutFinish } from './mouth.ts';
import { legsOf } from './outline.ts';
import { type Outcome, done, refuse } from './outcome.ts';
import { sewnPoint } from './rejoin.ts';
import { withPiece } from './with.ts';

/** A dart as it will be sewn. mm and radians. */
export interface SewnDart {
  /** Where the dart reaches to, and where it is sewn to. */
  readonly tip: Point;
  readonly point: Point;
  /** Outer ends and lengths of the sewn leg that runs into the point, and of the one out of it. */
  readonly ends: readonly [Point, Point];
  readonly legs: readonly [number, number];
  /** Angle between the sewn legs: larger than that of the dart once it is backed off. */
  readonly angle: number;
  /** Straight distance between the outer ends. */
  readonly intake: number;
}

/**
 * Where the middle of a dart begins: the tip; the bust point of a dart that the block draws to its sewn point; with legs over
 * an alternate pivot, the middle between these two, which is what the dart aims at.
 */
function reachOf(piece: Piece, dart: Dart): Point | undefined {
  const legs = legsOf(piece, dart);
  if (legs === undefined) return undefined;
  if (dart.state === 'sewn') {
    for (const part of piece.parts) {
      if (!part.edges.some((e) => e.id === legs.into.id)) continue;
      const bust = part.landmarks[dart.bustPoint];
      if (bust !== undefined) return bust;
    }
  }
  const into = legs.into.chain;
  const outOf = legs.outOf.chain;
  if (into.length > 1 && outOf.length > 1) return lerp(into[into.length - 1]!.a, outOf[0]!.d, 0.5);
  return lerp(chainEnd(into), chainStart(outOf), 0.5);
}

/** The middle of a dart: from the point that it reaches to, to where it crosses the straight line between the legs' outer ends. */
export function middleOfDart(
  piece: Piece,
  dartId: string,
): { readonly tip: Point; readonly mouth: Point } | undefined {
  const found = mouthOf(piece, dartId);
  if ('refused' in found) return undefined;
  const { dart, start, end } = found.ok;
  const tip = reachOf(piece, dart);
  if (tip === undefined) return undefined;
  const angle = angleBetween(sub(start, tip), sub(end, tip));
  if (!(angle > FLAT && angle < PI - FLAT)) return undefined;
  const way = sub(sewnPoint(tip, start, end, 1), tip);
  const across = sub(end, start);
  return { tip, mouth: add(tip, scale(way, cross(sub(start, tip), across) / cross(way, across))) };
}

/**
 * Draws a dart to its sewn point: on the middle of the dart, `by` mm from its tip (from the middle between the alternate pivots
 * where its legs have one). The legs are drawn straight from there to their outer ends; what is cut stays cut, and the paper
 * of the sheets and the dart's own angle stay as they were. Done again it draws anew and leaves a cap out. Refusals: those of
 * `mouthOf`, `bad-length`, `dart-not-open` when the legs lie on or over each other, `back-off-too-far` when the point would
 * lie beyond the edge (`room` mm).
 */
export function backOff(piece: Piece, dartId: string, by: number): Outcome<Piece> {
  if (!(by >= 0 && by < 1e6)) return refuse('bad-length', { by });
  const found = mouthOf(piece, dartId);
  if ('refused' in found) return found;
  const mouth = found.ok;
  const legs = legsOf(piece, mouth.dart);
  const tip = reachOf(piece, mouth.dart);
  if (legs === undefined || tip === undefined) return refuse('no-such-dart', { dart: dartId });
  const { start, end } = mouth;
  if (!(angleBetween(sub(start, tip), sub(end, tip)) > FLAT))
    return refuse('dart-not-open', { dart: dartId });
  const point = sewnPoint(tip, start, end, by);
  if (!(angleBetween(sub(start, point), sub(end, point)) > FLAT))
    return refuse('back-off-too-far', { dart: dartId, room: distance(tip, lerp(start, end, 0.5)) });
  const sewn = sewnLegs(legs, start, point, end);
  const seam = withMouth(mouth, sewn);
  const plain = withoutFinish(piece, [dartId]);
  return done(
    withFinished(withPiece(plain, { seam }), {
      dart: dartId,
      tip,
      sewnPoint: point,
      by,
      trued: undefined,
      fold: undefined,
    }),
  );
}

/** Less than this, radians, is no opening. */
const FLAT = 1e-9;

/** The two legs drawn straight to a point. */
export function sewnLegs(
  { into, outOf }: { readonly into: Edge; readonly outOf: Edge },
  start: Point,
  point: Point,
  end: Point,
): readonly [Edge, Edge] {
  return [
    redrawn(into, [line(start, point)], distance(start, point)),
    redrawn(outOf, [line(point, end)], distance(point, end)),
  ];
}

/**
 * A dart as it will be sewn: to the point it was backed off to, else straight to its tip. Undefined for a dart that is closed or drawn
 * over, or whose legs bend and were not drawn to a sewn point.
 */
export function sewnDart(piece: Piece, dartId: string): SewnDart | undefined {
  const found = mouthOf(piece, dartId);
  if ('refused' in found) return undefined;
  const { dart, outline, start, end } = found.ok;
  const known = finishedDart(piece, dartId);
  const tip = known?.tip ?? reachOf(piece, dart);
  const [into] = outline;
  const bent = known === undefined && into!.chain.length > 1;
  if (tip === undefined || bent) return undefined;
  const point = known?.sewnPoint ?? chainEnd(into!.chain);
  return {
    tip,
    point,
    ends: [start, end],
    legs: [distance(start, point), distance(point, end)],
    angle: angleBetween(sub(start, point), sub(end, point)),
    intake: distance(start, end),
  };
}
