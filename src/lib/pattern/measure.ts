import type { Point } from '../geometry/types.ts';
import type { Edge, Part, Piece } from './types.ts';
import { distance, sub } from '../geometry/point.ts';
import { chainEnd, chainStart } from '../geometry/chain.ts';
import { signedArea } from '../geometry/outline.ts';
import { angleBetween } from '../geometry/trig.ts';
import { chainOf, findDart, legsOf, partOf } from './outline.ts';

/** Paper of a piece in mm²: inside the treated seam outline if there is one, else the sum over its sheets. */
export function pieceArea(piece: Piece): number {
  if (piece.seam !== undefined) return signedArea(chainOf(piece.seam));
  let sum = 0;
  for (const part of piece.parts) sum += signedArea(chainOf(part.edges));
  return sum;
}

interface LegMeasures {
  /** Outer ends and tips of the leg into the tip and of the leg out of it, mm. */
  readonly inEnd: Point;
  readonly outEnd: Point;
  readonly inTip: Point;
  readonly outTip: Point;
  /** The bust point as each leg's sheet carries it. */
  readonly inBust: Point;
  readonly outBust: Point;
}

function measured(piece: Piece, dartId: string): LegMeasures | undefined {
  const dart = findDart(piece, dartId);
  const legs = dart && legsOf(piece, dart);
  if (dart === undefined || legs === undefined) return undefined;
  const bust = (e: Edge): Point | undefined => {
    const own = partOf(piece, e.id)?.landmarks[dart.bustPoint];
    return own ?? anyOf(piece.parts, dart.bustPoint);
  };
  const inBust = bust(legs.into);
  const outBust = bust(legs.outOf);
  if (inBust === undefined || outBust === undefined) return undefined;
  return {
    inEnd: chainStart(legs.into.chain),
    inTip: chainEnd(legs.into.chain),
    outTip: chainStart(legs.outOf.chain),
    outEnd: chainEnd(legs.outOf.chain),
    inBust,
    outBust,
  };
}

function anyOf(parts: readonly Part[], id: string): Point | undefined {
  for (const p of parts) if (p.landmarks[id] !== undefined) return p.landmarks[id];
  return undefined;
}

/**
 * The dart's angle at the bust point, radians: between lines from there to the legs' outer ends, wherever the drawn tip is. Once a
 * part has turned it is what is left open; negative where the sheets overlap. Undefined without the dart.
 */
export function dartAngle(piece: Piece, dart: string): number | undefined {
  const m = measured(piece, dart);
  return m && angleBetween(sub(m.inEnd, m.inBust), sub(m.outEnd, m.outBust));
}

/** The angle between the legs as drawn, at their own tip, radians. Larger than `dartAngle` for a sewn dart. */
export function drawnAngle(piece: Piece, dart: string): number | undefined {
  const m = measured(piece, dart);
  return m && angleBetween(sub(m.inEnd, m.inTip), sub(m.outEnd, m.outTip));
}

/** Length of the legs from the bust point to the edge, mm (of the leg that runs into the tip; both are alike). */
export function legLength(piece: Piece, dart: string): number | undefined {
  const m = measured(piece, dart);
  return m && distance(m.inBust, m.inEnd);
}

/** Straight distance between the outer ends of the legs, mm: the intake, and after a turn the gap that is left. */
export function intake(piece: Piece, dart: string): number | undefined {
  const m = measured(piece, dart);
  return m && distance(m.inEnd, m.outEnd);
}

/** Distance between the tips of the two legs, mm: 0 unless a part slipped off its pivot. */
export function slip(piece: Piece, dart: string): number | undefined {
  const m = measured(piece, dart);
  return m && distance(m.inTip, m.outTip);
}
