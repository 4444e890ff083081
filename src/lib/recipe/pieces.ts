import type { Piece } from '../pattern/types.ts';
import type { Outcome } from '../pattern/outcome.ts';
import type { Applied, Refusal, Work } from './types.ts';

/** Refuses, with what the sentence for the code needs to know. */
export function refused(code: string, detail?: Refusal['detail']): { readonly refused: Refusal } {
  return { refused: detail === undefined ? { code } : { code, detail } };
}

/** The piece with this id, or undefined. */
export const pieceById = (work: Work, id: string): Piece | undefined => work.pieces.find((p) => p.id === id);

/** The set a piece belongs to: '' for the learner's own, '@woven' or '@knit' for a copy. */
export function setOf(pieceId: string): string {
  const at = pieceId.indexOf('@');
  return at < 0 ? '' : pieceId.slice(at);
}

/** The set meant by a fabric: its copy where there is one, else the pieces that were treated without copying. */
export function setFor(work: Work, as: string | undefined): string {
  return as !== undefined && work.pieces.some((p) => setOf(p.id) === `@${as}`) ? `@${as}` : '';
}

/** All pieces of a set, back included. */
export const piecesOfSet = (work: Work, set: string): Piece[] =>
  work.pieces.filter((p) => setOf(p.id) === set);

/** The front before it is separated, or undefined. */
export const frontOf = (work: Work): Piece | undefined => pieceById(work, 'front');

/** Work with the piece of that id replaced by others (one, or two after a cut). */
export function withPieces(work: Work, id: string, ...by: readonly Piece[]): Work {
  return { ...work, pieces: work.pieces.flatMap((p) => (p.id === id ? by : [p])) };
}

/** The piece changed by an operation of the pattern layer, or that operation's refusal. */
export function changed(work: Work, id: string, outcome: Outcome<Piece>): Applied {
  return 'refused' in outcome ? outcome : { work: withPieces(work, id, outcome.ok) };
}

/** The first piece of the learner's own set that has this dart; before separating that is the front. */
export function pieceWithDart(work: Work, dart: string): Piece | undefined {
  return work.pieces.find((p) => setOf(p.id) === '' && p.darts.some((d) => d.id === dart));
}
