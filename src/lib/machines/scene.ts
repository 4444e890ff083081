import { chainLength, pointAtLength } from '../geometry/chain.ts';
import { distance } from '../geometry/point.ts';
import type { Chain, Point } from '../geometry/types.ts';
import type { Dart, Part, Piece } from '../pattern/types.ts';
import type { DrawnLine, Fabric, Work } from '../recipe/types.ts';

/** A setting of a tool: a choice, a length in mm or an angle in radians. */
export type OptionValue = string | number;
export type Options = Readonly<Record<string, OptionValue>>;

/** What a tool may see of the table. */
export interface Scene {
  readonly work: Work;
  readonly fabric: Fabric;
  readonly options: Options;
  /** How near something must be to be snapped to, mm at full size (the table gives some screen pixels). */
  readonly reach: number;
  /** What the step asks to be pointed out; left out: what the course asks. */
  readonly asked?: readonly string[] | undefined;
}

/** The pieces of the set that is being finished: plain ones, or the copy for the fabric once there is one; and the back. */
export function pieceSet(work: Work, fabric: Fabric): readonly Piece[] {
  const copy = work.pieces.filter((piece) => piece.id.endsWith(`@${fabric}`));
  const plain = work.pieces.filter((piece) => !piece.id.includes('@'));
  if (copy.length === 0) return plain;
  // A back that was trued is two halves, `back-left` and `back-right`: still the back.
  const base = (piece: Piece) => (isBack(piece) ? 'back' : piece.id.split('@')[0]);
  const named = new Set(copy.map(base));
  return [...copy, ...plain.filter((piece) => !named.has(base(piece)))];
}

export const isBack = (piece: Piece): boolean => piece.id.startsWith('back');
/** Whether a front was opened out: it has a left side. */
export const isWhole = (front: Piece): boolean =>
  front.parts.some((part) => part.edges.some((edge) => edge.side === 'left'));
export const frontOf = (work: Work): Piece | undefined => work.pieces.find((piece) => piece.id === 'front');
/** The style line; slash lines are drawn lines too, but of another kind. */
export const lineOf = (work: Work): DrawnLine | undefined => work.lines.find(({ kind }) => kind !== 'slash');
export const middleOf = (chain: Chain): Point => pointAtLength(chain, chainLength(chain) / 2);

/** The fronts on the table: `front`, or what it was cut into, of the fabric's set. */
export const frontPieces = (scene: Scene): readonly Piece[] =>
  pieceSet(scene.work, scene.fabric).filter((piece) => !isBack(piece));

/** A landmark anywhere on the pieces, and the part that carries it. */
export function landmarkIn(
  pieces: readonly Piece[],
  id: string,
): { piece: Piece; part: Part; point: Point } | undefined {
  for (const piece of pieces)
    for (const part of piece.parts) {
      const point = part.landmarks[id];
      if (point) return { piece, part, point };
    }
  return undefined;
}

/** Darts of the front pieces with the piece they are on. */
export const dartsOf = (scene: Scene): readonly { piece: Piece; dart: Dart }[] =>
  frontPieces(scene).flatMap((piece) => piece.darts.map((dart) => ({ piece, dart })));

/** The bust points of the darts, each with the first of its darts. */
export function bustPoints(scene: Scene): readonly { dart: Dart; piece: Piece; point: Point }[] {
  return dartsOf(scene).flatMap(({ piece, dart }, i, all) => {
    if (all.findIndex((one) => one.dart.bustPoint === dart.bustPoint) < i) return [];
    const point = landmarkIn([piece], dart.bustPoint)?.point;
    return point ? [{ dart, piece, point }] : [];
  });
}

/** The nearest of some things that have a point, within `reach` mm. */
export function nearestOf<T extends { readonly point: Point }>(
  things: readonly T[],
  to: Point,
  reach: number,
): T | undefined {
  let best: T | undefined;
  let least = reach;
  for (const thing of things) {
    const d = distance(thing.point, to);
    if (d <= least) [best, least] = [thing, d];
  }
  return best;
}
