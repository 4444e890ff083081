import { chainLength, pointAtLength } from '../geometry/chain.ts';
import { fromWeights, meanValueWeights } from '../geometry/meanvalue.ts';
import { nearestOnChain } from '../geometry/nearest.ts';
import { distance } from '../geometry/point.ts';
import type { Chain, Point } from '../geometry/types.ts';
import { landmark, outlineOf } from '../pattern/outline.ts';
import type { Piece } from '../pattern/types.ts';
import { frontOf, pieceById } from './pieces.ts';
import type { Anchor, Work } from './types.ts';

/** Within this of a bust point a point is held by its offset from it, mm: there the distance matters, not the proportion. */
export const NEAR_BUST = 50;

const RIGHT = ['right/neck-point', 'right/shoulder-point', 'right/underarm', 'right/side-waist'];
/** The corners of the half front, and of the complete front, round the outline; a dart is not a corner of the body. */
const HALF = ['neck-centre', ...RIGHT, 'waist-centre'];
const WHOLE = [...HALF, ...[...RIGHT].reverse().map((id) => id.replace('right/', 'left/'))];

/** The piece in which anchors of `pieceId` are read: for the front the whole paper as opened out, before any cut. */
function paper(work: Work, pieceId: string): Piece | undefined {
  return pieceId === 'front' ? (work.opened ?? frontOf(work)) : pieceById(work, pieceId);
}

/**
 * The corners over which a point inside a piece is held, in outline order, mm: for the front its outline landmarks, for
 * any other piece the ends of its outline's edges. Empty for a piece that is not there.
 */
export function anchorPolygon(work: Work, pieceId: string): readonly Point[] {
  const piece = paper(work, pieceId);
  if (piece === undefined) return [];
  if (pieceId !== 'front') return outlineOf(piece).map((edge) => edge.chain[0]!.a);
  if (piece !== lastPaper) {
    lastPaper = piece;
    lastCorners = cornersOf(piece, work.opened === undefined ? HALF : WHOLE);
  }
  return lastCorners;
}

// Paper never changes (and is either a half or opened out), and each point of a line is held in it: its corners are kept.
let lastPaper: Piece | undefined;
let lastCorners: readonly Point[] = [];

function cornersOf(piece: Piece, ids: readonly string[]): Point[] {
  const corners: Point[] = [];
  for (const id of ids) {
    const corner = landmark(piece, id);
    if (corner !== undefined) corners.push(corner);
  }
  return corners;
}

/** The chain of an edge or a drawn line, as it lies on the table now; of `only` when it has one, else of the first piece that has. */
export function chainOf(work: Work, id: string, only?: string): Chain | undefined {
  for (const piece of piecesFor(work, only)) {
    if (piece.seam !== undefined) for (const edge of piece.seam) if (edge.id === id) return edge.chain;
    for (const part of piece.parts) for (const edge of part.edges) if (edge.id === id) return edge.chain;
    for (const part of piece.parts) for (const line of part.lines) if (line.id === id) return line.chain;
  }
  return work.lines.find((line) => line.id === id)?.chain;
}

/** All pieces, the one that is meant first. */
function piecesFor(work: Work, only: string | undefined): readonly Piece[] {
  const own = only === undefined ? undefined : pieceById(work, only);
  return own === undefined || own === work.pieces[0] ? work.pieces : [own, ...work.pieces];
}

/**
 * Where an anchor is, mm; undefined when what it names is not there (any more). `only` says which piece is meant where
 * several carry the same names, as copies do.
 */
export function resolveAnchor(work: Work, anchor: Anchor, only?: string): Point | undefined {
  if ('on' in anchor) {
    const chain = chainOf(work, anchor.on, only);
    return chain === undefined ? undefined : pointAtLength(chain, anchor.at * chainLength(chain));
  }
  if ('landmark' in anchor) {
    for (const piece of piecesFor(work, only)) {
      const p = landmark(piece, anchor.landmark);
      if (p !== undefined) return { x: p.x + (anchor.dx ?? 0), y: p.y + (anchor.dy ?? 0) };
    }
    return undefined;
  }
  const polygon = anchorPolygon(work, anchor.inside);
  return polygon.length === anchor.weights.length ? fromWeights(polygon, anchor.weights) : undefined;
}

/**
 * The anchor of a point in a piece: by its offset from a bust point less than NEAR_BUST away, else by mean value
 * coordinates over `anchorPolygon`; where these do not exist (a piece that is not there, or a point where the weights have
 * no finite sum), by its offset from the nearest landmark of the piece.
 */
export function anchorInside(work: Work, pieceId: string, point: Point): Anchor {
  const piece = paper(work, pieceId);
  const near =
    piece === undefined ? undefined : nearestLandmark(piece, point, (id) => id.endsWith('bust-point'));
  if (near !== undefined && near.distance < NEAR_BUST) return offsetFrom(near, point);
  const weighed = weightsIn(work, pieceId, point);
  if (weighed !== undefined) return weighed;
  const any = piece === undefined ? undefined : nearestLandmark(piece, point, () => true);
  if (any === undefined) throw new RangeError(`no piece ${pieceId} to hold a point in`);
  return offsetFrom(any, point);
}

/** A point inside a piece by mean value coordinates; undefined where these do not exist. */
function weightsIn(work: Work, pieceId: string, point: Point): Anchor | undefined {
  const polygon = anchorPolygon(work, pieceId);
  if (polygon.length < 3) return undefined;
  try {
    const weights = meanValueWeights(polygon, point);
    return weights.every((w) => Math.abs(w) <= 1000) ? { inside: pieceId, weights } : undefined;
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

/**
 * The anchor of a point that belongs to another one, as a handle does to its joint: held in the same way as that, so that the
 * two stay together on every body.
 */
export function anchorWith(work: Work, pieceId: string, point: Point, other: Anchor): Anchor {
  if ('landmark' in other) {
    const at = resolveAnchor(work, { landmark: other.landmark }, pieceId);
    if (at !== undefined) return offsetFrom({ id: other.landmark, at, distance: 0 }, point);
  }
  return weightsIn(work, pieceId, point) ?? anchorInside(work, pieceId, point);
}

interface NearLandmark {
  readonly id: string;
  readonly at: Point;
  readonly distance: number;
}

/** The landmark of a piece nearest to a point, of those that `wanted` lets through. */
export function nearestLandmark(
  piece: Piece,
  point: Point,
  wanted: (id: string) => boolean,
): NearLandmark | undefined {
  let best: NearLandmark | undefined;
  for (const part of piece.parts) {
    for (const id of Object.keys(part.landmarks)) {
      const at = part.landmarks[id]!;
      const d = distance(at, point);
      if (wanted(id) && (best === undefined || d < best.distance)) best = { id, at, distance: d };
    }
  }
  return best;
}

function offsetFrom(landmark: NearLandmark, point: Point): Anchor {
  return { landmark: landmark.id, dx: point.x - landmark.at.x, dy: point.y - landmark.at.y };
}

/** The place on an edge or drawn line nearest to a point, as an anchor. Throws RangeError when there is no such edge. */
export function anchorOn(work: Work, edgeId: string, point: Point): Anchor {
  const chain = chainOf(work, edgeId);
  if (chain === undefined) throw new RangeError(`no edge ${edgeId}`);
  return { on: edgeId, at: fractionAt(chain, point) };
}

/** How far along a chain its nearest place to a point is, as a fraction of its arc length. */
export function fractionAt(chain: Chain, point: Point): number {
  return Math.min(1, Math.max(0, nearestOnChain(chain, point).length / chainLength(chain)));
}
