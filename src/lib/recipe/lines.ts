import { chainLength } from '../geometry/chain.ts';
import { addConnector } from '../pattern/connector.ts';
import type { Outcome } from '../pattern/outcome.ts';
import type { InnerLine, Notch, Piece } from '../pattern/types.ts';
import type { DrawnLine, Refusal, Work } from './types.ts';
import { frontOf, refused } from './pieces.ts';

/**
 * The front while lines may be drawn on it: opened out, in one sheet, nothing cut. Else the refusal 'not-opened' or
 * 'already-cut'.
 */
export function uncutFront(work: Work): { readonly front: Piece } | { readonly refused: Refusal } {
  const front = frontOf(work);
  if (front === undefined || front.parts.length > 1 || front.hinges.length > 0) return refused('already-cut');
  return work.opened === undefined ? refused('not-opened') : { front };
}

/** The inner lines of a piece that is one sheet, changed by a function. */
export function withLines(
  piece: Piece,
  change: (lines: readonly InnerLine[]) => readonly InnerLine[],
): Piece {
  return { ...piece, parts: piece.parts.map((part) => ({ ...part, lines: change(part.lines) })) };
}

/** The line of that id as it is drawn on a piece that is not cut. */
export const innerLine = (piece: Piece, id: string): InnerLine | undefined =>
  piece.parts[0]?.lines.find((line) => line.id === id);

/** Piece with other notches across one of its lines, in the order in which they lie. */
export function withNotches(piece: Piece, lineId: string, notches: readonly Notch[]): Piece {
  const sorted = [...notches].sort((a, b) => a.at - b.at);
  return withLines(piece, (lines) =>
    lines.map((line) => (line.id === lineId ? { ...line, notches: sorted } : line)),
  );
}

/** Work with this drawn line put in the place of the one with its id, or added. */
export function withDrawn(work: Work, drawn: DrawnLine): Work {
  const known = work.lines.some((line) => line.id === drawn.id);
  const lines = known
    ? work.lines.map((line) => (line.id === drawn.id ? drawn : line))
    : [...work.lines, drawn];
  return { ...work, lines };
}

/** Without the connector of a dart: on the paper and in the record of every line. */
export function withoutConnector(
  front: Piece,
  drawn: DrawnLine,
  dart: string,
): { front: Piece; drawn: DrawnLine } {
  const { [dart]: _, ...feet } = drawn.feet;
  return {
    front: withLines(front, (lines) =>
      lines.filter((line) => !(line.kind === 'connector' && line.dart === dart)),
    ),
    drawn: { ...drawn, feet },
  };
}

/**
 * Draws the connector from a dart's tip to the line at a fraction of the line's length, in place of an earlier one of that
 * dart. Refusals are those of `addConnector`.
 */
export function connectAt(
  front: Piece,
  drawn: DrawnLine,
  dart: string,
  fraction: number,
): Outcome<{ front: Piece; drawn: DrawnLine }> {
  const clean = withoutConnector(front, drawn, dart);
  const at = fraction * chainLength(drawn.chain);
  const next = addConnector(clean.front, dart, drawn.id, at);
  if ('refused' in next) return next;
  const connector = next.ok.parts[0]!.lines.find((line) => line.kind === 'connector' && line.dart === dart)!;
  const tip = connector.chain[0]!.a;
  const foot = connector.chain[connector.chain.length - 1]!.d;
  return {
    ok: {
      front: next.ok,
      drawn: { ...clean.drawn, feet: { ...clean.drawn.feet, [dart]: { at, foot, tip } } },
    },
  };
}
