import { shortSort } from '../geometry/short-sort.ts';
import { type Outcome, done, refuse } from './outcome.ts';
import { findLine, isCut } from './style-line.ts';
import type { InnerLine, Notch, Piece } from './types.ts';
import { withLines, withParts } from './with.ts';
import { withLine } from './with-marks.ts';

/**
 * Marks a notch `at` mm from the start of a line that is not cut there yet (the same id again moves it). Refusals:
 * `no-such-line`, `line-already-cut`, `notch-off-line`.
 */
export function markNotch(piece: Piece, lineId: string, notch: Notch): Outcome<Piece> {
  if (findLine(piece, lineId) === undefined)
    return refuse(isCut(piece, lineId) ? 'line-already-cut' : 'no-such-line', { line: lineId });
  const home = stretchAt(piece, lineId, notch.at);
  if (home === undefined)
    return refuse(isCut(piece, lineId) ? 'line-already-cut' : 'notch-off-line', {
      line: lineId,
      at: notch.at,
    });
  return done(
    eachLine(piece, (l) => {
      const notches = l.notches.filter((n) => n.id !== notch.id);
      if (l === home) {
        notches.push(notch);
        return withLine(l, { notches: shortSort(notches, (p, q) => p.at - q.at) });
      }
      return notches.length < l.notches.length ? withLine(l, { notches }) : l;
    }),
  );
}

/** The stretch of a line that holds the place `at` mm along the whole line. */
function stretchAt(piece: Piece, lineId: string, at: number): InnerLine | undefined {
  for (const part of piece.parts)
    for (const l of part.lines) if (l.id === lineId && at >= l.origin.from && at <= l.origin.to) return l;
  return undefined;
}

/** Takes a notch off its line. Refusals: `no-such-notch`. */
export function removeNotch(piece: Piece, id: string): Outcome<Piece> {
  if (!piece.parts.some((p) => p.lines.some((l) => l.notches.some((n) => n.id === id))))
    return refuse('no-such-notch', { notch: id });
  return done(
    eachLine(piece, (l) =>
      l.notches.some((n) => n.id === id) ? withLine(l, { notches: l.notches.filter((n) => n.id !== id) }) : l,
    ),
  );
}

const eachLine = (piece: Piece, change: (l: InnerLine) => InnerLine): Piece =>
  withParts(
    piece,
    piece.parts.map((p) => withLines(p, p.lines.map(change))),
  );
