import { suffixOf } from '../pattern/copy.ts';
import { findDart } from '../pattern/outline.ts';
import type { Piece } from '../pattern/types.ts';
import type { Outcome } from '../pattern/outcome.ts';
import type { Open } from '../pattern/with.ts';
import type { Applied, Refusal, Work } from './types.ts';

/** Refuses, with what the sentence for the code needs to know. */
export function refused(code: string, detail?: Refusal['detail']): { readonly refused: Refusal } {
  return { refused: detail === undefined ? { code } : { code, detail } };
}

/** The work with some of it changed; all fields in one order (why: `pattern/with.ts`). */
export const withWork = (w: Work, c: Partial<Work>): Work => ({
  block: c.block ?? w.block,
  opened: c.opened ?? w.opened,
  pieces: c.pieces ?? w.pieces,
  lines: c.lines ?? w.lines,
  turns: c.turns ?? w.turns,
  identified: c.identified ?? w.identified,
  readings: c.readings ?? w.readings,
  walked: c.walked ?? w.walked,
  overlaid: c.overlaid ?? w.overlaid,
  placed: c.placed ?? w.placed,
});

/** A copy of the work of which a command sets fields before it hands the work on: quicker than `withWork`. */
export const openWork = (w: Work): Open<Work> => ({
  block: w.block,
  opened: w.opened,
  pieces: w.pieces,
  lines: w.lines,
  turns: w.turns,
  identified: w.identified,
  readings: w.readings,
  walked: w.walked,
  overlaid: w.overlaid,
  placed: w.placed,
});

/** The work with other pieces: what most commands change. */
function withPieceList(w: Work, pieces: readonly Piece[]): Work {
  const next = openWork(w);
  next.pieces = pieces;
  return next;
}

/** The piece with this id, or undefined. */
export function pieceById(work: Work, id: string): Piece | undefined {
  for (const p of work.pieces) if (p.id === id) return p;
  return undefined;
}

/** What a copy was made for; undefined for a piece that was cut first. */
export const fabricOf = (pieceId: string): string | undefined => suffixOf(pieceId).slice(1) || undefined;

/** The front before it is separated, or undefined. */
export const frontOf = (work: Work): Piece | undefined => pieceById(work, 'front');

/** Work with the piece of that id replaced by others (one, or two after a cut). */
export function withPieces(work: Work, id: string, ...by: readonly Piece[]): Work {
  const pieces: Piece[] = [];
  for (const piece of work.pieces) {
    if (piece.id === id) pieces.push(...by);
    else pieces.push(piece);
  }
  return withPieceList(work, pieces);
}

/** Work with the piece of that id replaced by another. */
function withPieceAs(work: Work, id: string, by: Piece): Work {
  const pieces = work.pieces.slice();
  for (let i = 0; i < pieces.length; i++) if (pieces[i]!.id === id) pieces[i] = by;
  return withPieceList(work, pieces);
}

/** The piece changed by an operation of the pattern layer, or that operation's refusal. */
export function changed(work: Work, id: string, outcome: Outcome<Piece>): Applied {
  return 'refused' in outcome ? outcome : { work: withPieceAs(work, id, outcome.ok) };
}

/** Does an operation of the pattern layer on the piece of that id. */
export function onPiece(work: Work, id: string, operation: (piece: Piece) => Outcome<Piece>): Applied {
  const piece = pieceById(work, id);
  return piece === undefined ? noSuchPiece(id) : changed(work, id, operation(piece));
}

/** The refusal of a command for a piece that is not on the table. */
export const noSuchPiece = (id: string): Applied => refused('no-such-piece', { piece: id });

/** The piece that has this dart, copies left out; before separating that is the front. */
export function pieceWithDart(work: Work, dart: string): Piece | undefined {
  for (const p of work.pieces) if (suffixOf(p.id) === '' && findDart(p, dart) !== undefined) return p;
  return undefined;
}

/** Does an operation of the pattern layer on the piece that has this dart. */
export function onDart(work: Work, dart: string, operation: (piece: Piece) => Outcome<Piece>): Applied {
  const piece = pieceWithDart(work, dart);
  return piece === undefined ? refused('no-such-dart', { dart }) : changed(work, piece.id, operation(piece));
}
