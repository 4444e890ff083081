import { reverseChain } from '../geometry/chain.ts';
import type { Chain, Point } from '../geometry/types.ts';
import type { Dart, Part, Piece } from '../pattern/types.ts';
import type { DrawnLine, Fabric, Work } from '../recipe/types.ts';

/** The piece with this id, if it lies on the table. */
export const pieceOf = (work: Work, id: string): Piece | undefined =>
  work.pieces.find((piece) => piece.id === id);

/** The learner's own pieces of the front (not the back, not copies). */
export const ownFront = (work: Work): readonly Piece[] =>
  work.pieces.filter((piece) => !isBack(piece) && !piece.id.includes('@'));

/** The pieces worked on for a fabric: those of its copy once there is one, else the learner's own. */
export function piecesFor(work: Work, fabric: Fabric): readonly Piece[] {
  const copy = work.pieces.filter((piece) => piece.id.endsWith(`@${fabric}`));
  return copy.length > 0 ? copy : work.pieces.filter((piece) => !piece.id.includes('@'));
}

/** The back as drafted, or a half of it that was trued by itself. */
export const isBack = (piece: Piece): boolean => piece.id.startsWith('back');

/** A dart by id with the piece it belongs to, among `pieces`. */
export function dartOf(pieces: readonly Piece[], id: string): { piece: Piece; dart: Dart } | undefined {
  for (const piece of pieces) {
    const dart = piece.darts.find((candidate) => candidate.id === id);
    if (dart) return { piece, dart };
  }
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
  const line = work.lines.find((candidate) => candidate.id === id);
  if (!line) return undefined;
  const [first, last] = line.ends;
  const reversed =
    last !== undefined && starts.includes(last) && !(first !== undefined && starts.includes(first));
  if (!reversed) return { line, chain: line.chain, ends: line.ends, reversed };
  return { line, chain: reverseChain(line.chain), ends: [last, first], reversed };
}
