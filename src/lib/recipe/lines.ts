import { findLine } from '../pattern/style-line.ts';
import type { Piece } from '../pattern/types.ts';
import { frontOf, openWork, refused } from './pieces.ts';
import type { DrawnLine, Refusal, Work } from './types.ts';

/**
 * The front while lines may be drawn on it: opened out, in one sheet, nothing cut. Else the refusal 'not-opened' or
 * 'already-cut'.
 */
export function uncutFront(work: Work): { readonly front: Piece } | { readonly refused: Refusal } {
  const front = frontOf(work);
  if (front === undefined || front.parts.length > 1 || front.hinges.length > 0) return refused('already-cut');
  return work.opened === undefined ? refused('not-opened') : { front };
}

/** The length in mm of a line that is drawn on the front and not cut; undefined when there is none. */
export function lineLength(front: Piece, id: string): number | undefined {
  const line = findLine(front, id)?.line;
  return line?.kind === 'style-line' ? line.origin.to : undefined;
}

/** Work with these drawn lines. */
export function withLineList(work: Work, lines: readonly DrawnLine[]): Work {
  const next = openWork(work);
  next.lines = lines;
  return next;
}

/** Work with this drawn line put in the place of the one with its id, or added. */
export function withDrawn(work: Work, drawn: DrawnLine): Work {
  const known = work.lines.some((line) => line.id === drawn.id);
  const lines = known
    ? work.lines.map((line) => (line.id === drawn.id ? drawn : line))
    : [...work.lines, drawn];
  return withLineList(work, lines);
}
