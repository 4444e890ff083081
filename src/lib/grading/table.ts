import { reverseChain } from '../geometry/chain-moved.ts';
import type { Chain, Point } from '../geometry/types.ts';
import type { Dart, Part, Piece } from '../pattern/types.ts';
import type { DrawnLine, Fabric, Work } from '../recipe/types.ts';

/** The piece with this id, if it lies on the table. */
export function pieceOf(work: Work, id: string): Piece | undefined {
  for (const piece of work.pieces) if (piece.id === id) return piece;
  return undefined;
}

const isOwnFront = (piece: Piece): boolean => !isBack(piece) && !piece.id.includes('@');

/** The learner's own pieces of the front (not the back, not copies). */
export const ownFront = (work: Work): readonly Piece[] => work.pieces.filter(isOwnFront);

/** The pieces worked on for a fabric: those of its copy once there is one, else the learner's own. */
export function piecesFor(work: Work, fabric: Fabric): readonly Piece[] {
  const ending = `@${fabric}`;
  const found: Piece[] = [];
  for (const piece of work.pieces) if (piece.id.endsWith(ending)) found.push(piece);
  if (found.length === 0) for (const piece of work.pieces) if (!piece.id.includes('@')) found.push(piece);
  return found;
}

/** The back as drafted, or a half of it that was trued by itself. */
export const isBack = (piece: Piece): boolean => piece.id.startsWith('back');

/** A dart by id with the piece it belongs to, among the learner's own pieces of the front. */
export function ownDart(work: Work, id: string): { piece: Piece; dart: Dart } | undefined {
  for (const piece of work.pieces)
    for (const dart of piece.darts) if (dart.id === id && isOwnFront(piece)) return { piece, dart };
  return undefined;
}

/** The side in a landmark's or an edge's name: `right` of `right/bust-point`. */
export function sideOf(name: string): string {
  const end = name.indexOf('/');
  return end < 0 ? name : name.slice(0, end);
}

/** The drawn line of that id. */
export function lineOf(work: Work, id: string | undefined): DrawnLine | undefined {
  for (const line of work.lines) if (line.id === id) return line;
  return undefined;
}

/** Copies of a landmark on the parts of some pieces: one for each part that carries it. */
export function copiesOf(
  pieces: readonly Piece[],
  id: string,
): readonly { readonly piece: Piece; readonly part: Part; readonly at: Point }[] {
  const copies: { piece: Piece; part: Part; at: Point }[] = [];
  for (const piece of pieces) {
    for (const part of piece.parts) {
      const at = part.landmarks[id];
      if (at) copies.push({ piece, part, at });
    }
  }
  return copies;
}

/** A style line as drawn, in the direction that the lesson counts in (see `styleLine`). */
export interface Oriented {
  readonly line: DrawnLine;
  readonly chain: Chain;
  readonly ends: readonly [string | undefined, string | undefined];
  /** Drawn from the lesson's end to its start. */
  readonly reversed: boolean;
}

/**
 * The drawn line by id, turned so that it starts on an edge of `starts`; a line drawn the other way round is the same line.
 * undefined when it is not there.
 */
export function styleLine(work: Work, id: string, starts: readonly string[]): Oriented | undefined {
  const line = lineOf(work, id);
  if (!line) return undefined;
  const [first, last] = line.ends;
  const reversed =
    last !== undefined && starts.includes(last) && !(first !== undefined && starts.includes(first));
  if (!reversed) return { line, chain: line.chain, ends: line.ends, reversed };
  return { line, chain: reverseChain(line.chain), ends: [last, first], reversed };
}
