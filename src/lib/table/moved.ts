import { withPart, withPiece } from '../pattern/with.ts';
import type { InnerLine, Part, Piece } from '../pattern/types.ts';
import { withWork } from '../recipe/pieces.ts';
import type { Work } from '../recipe/types.ts';
import { lineStrokes, type Drawn } from './model.ts';

/** The table but for some lines, and those lines. */
export interface MovedLines {
  readonly still: Work;
  /** The piece on which they lie. */
  readonly piece: string;
  readonly strokes: readonly Drawn[];
}

/**
 * The lines that were drawn or drawn anew, when that is all that happened; else undefined. What stands still is the same
 * object all through a drag, so that it need not be drawn anew with every move.
 */
export function movedLines(before: Work, after: Work): MovedLines | undefined {
  const i = before.pieces.findIndex((piece, at) => piece !== after.pieces[at]);
  const [was, is] = [before.pieces[i], after.pieces[i]];
  if (!was || !is || before.pieces.length !== after.pieces.length) return undefined;
  if (before.pieces.some((piece, at) => at > i && piece !== after.pieces[at])) return undefined;
  if (!sameBut(was, is, 'parts') || was.parts.length !== is.parts.length) return undefined;
  if (was.parts.some((part, at) => !sameBut(part, is.parts[at]!, 'lines'))) return undefined;
  const [old, now] = [linesOf(was), linesOf(is)];
  const gone = old.filter((line) => !now.includes(line));
  const come = now.filter((line) => !old.includes(line));
  // Tape is drawn for a piece as a whole.
  if ([...gone, ...come].some(({ kind }) => kind === 'taped')) return undefined;
  return { still: without(before, was, gone), piece: was.id, strokes: come.flatMap(lineStrokes) };
}

const linesOf = (piece: Piece): readonly InnerLine[] => piece.parts.flatMap(({ lines }) => lines);

function sameBut<T extends Piece | Part>(a: T, b: T, but: keyof T): boolean {
  for (const key in a) if (key !== but && a[key] !== b[key]) return false;
  return true;
}

const kept = new WeakMap<Work, { readonly lines: readonly InnerLine[]; readonly still: Work }>();

/** The work without some lines of a piece; made anew only when they are other ones than the last time. */
function without(work: Work, piece: Piece, lines: readonly InnerLine[]): Work {
  const last = kept.get(work);
  if (last?.lines.length === lines.length && last.lines.every((line, i) => line === lines[i]))
    return last.still;
  const parts = piece.parts.map((part) =>
    withPart(part, { lines: part.lines.filter((line) => !lines.includes(line)) }),
  );
  const pieces = work.pieces.map((one) => (one === piece ? withPiece(piece, { parts }) : one));
  const still = withWork(work, { pieces });
  kept.set(work, { lines, still });
  return still;
}
