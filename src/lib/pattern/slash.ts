import type { Part, Piece } from './types.ts';
import { signedArea } from '../geometry/outline.ts';
import { cutPart, followSplits } from './cut.ts';
import { isFinished } from './finished.ts';
import { connectorId } from './connector.ts';
import { boundaries, cutAlong, cutUp } from './line-cut.ts';
import { rehang } from './hang.ts';
import { chainOf, findDart } from './outline.ts';
import { type Outcome, done, refuse } from './outcome.ts';
import { openPart, openPiece, withLines } from './with.ts';

export interface SlashWish {
  readonly dart: string;
  readonly line: string;
  /** The end of the line at which the cut starts; left out once the line is cut at the foot. */
  readonly from?: 'start' | 'end' | undefined;
  /** mm: 0 to the tip; negative stops short of it, positive goes through. */
  readonly past: number;
}

/** The sheet that keeps its place: with the neck at centre front, else the waist there, else the larger one. */
export function keepsPlace(a: Part, b: Part): Part {
  for (const id of ['neck-centre', 'waist-centre']) {
    const onA = a.landmarks[id] !== undefined;
    if (onA !== (b.landmarks[id] !== undefined)) return onA ? a : b;
  }
  return Math.abs(signedArea(chainOf(a.edges))) >= Math.abs(signedArea(chainOf(b.edges))) ? a : b;
}

export const freedId = (dart: string): string => `freed-${dart}`;

/**
 * Cuts from an end of the line along it to the connector's foot and up the connector to the dart's tip. The sheet falls in two that
 * hang together in the tip; the freed one is called `freed-<dart>`, the other keeps its name. Refusals: `no-such-dart`, `already-finished`,
 * `no-connector`, `no-such-line`, `already-slashed`, `slash-stops-short` (mm), `not-separated` when no end is named and the
 * line is not cut yet, the code of the line's own fault, `cut-off-outline` when the line does not start on an edge.
 */
export function slash(piece: Piece, wish: SlashWish): Outcome<Piece> {
  const dart = findDart(piece, wish.dart);
  if (dart === undefined) return refuse('no-such-dart', { dart: wish.dart });
  if (isFinished(piece)) return refuse('already-finished', { dart: dart.id });
  if (piece.hinges.some((h) => h.dart === dart.id)) return refuse('already-slashed', { dart: dart.id });
  const id = connectorId(dart.id);
  const part = piece.parts.find((p) => p.lines.some((l) => l.id === id));
  const connector = part?.lines.find((l) => l.id === id);
  if (part === undefined || connector === undefined || connector.foot === undefined)
    return refuse('no-connector', { dart: dart.id });
  if (connector.line !== wish.line) return refuse('no-such-line', { line: wish.line });
  if (!(wish.past >= 0)) return refuse('slash-stops-short', { dart: dart.id, mm: -wish.past });

  const foot = connector.foot;
  let stretches = [cutUp(connector)];
  let lines = part.lines.filter((l) => l !== connector);
  let notches = piece.notches;
  // With the foot on a bank or at the line's end there is nothing to cut along.
  const style = part.lines.find((l) => l.id === wish.line && foot > l.origin.from && foot < l.origin.to);
  if (style !== undefined) {
    if (wish.from === undefined) return refuse('not-separated', { line: wish.line });
    const fault = style.faults?.[0];
    if (fault !== undefined) return refuse(fault.code, { line: wish.line });
    const start = wish.from === 'start' ? style.origin.from : style.origin.to;
    const along = cutAlong(part, style, boundaries(piece, wish.line), start, foot);
    if (along === undefined) return refuse('no-such-line', { line: wish.line });
    stretches = [...along.stretches, ...stretches];
    lines = [...lines.filter((l) => l !== style), ...along.rest];
    notches = [...notches, ...along.notches];
  }

  const cut = cutPart(withLines(part, lines), stretches);
  if ('refused' in cut) return cut;
  const { left, right, split } = cut.ok;
  const keeps = keepsPlace(left, right);
  const freed = openPart(keeps === left ? right : left);
  freed.id = freedId(dart.id);
  const at = piece.parts.indexOf(part);
  const hinge = { dart: dart.id, parts: [freed.id, keeps.id] as const, intact: wish.past === 0 };
  const parts = [...piece.parts.slice(0, at), keeps, ...piece.parts.slice(at + 1), freed];
  const next = openPiece(piece);
  next.parts = parts;
  next.hinges = [...rehang(piece.hinges, part.id, freed, piece), hinge];
  next.notches = followSplits(notches, split);
  return done(next);
}
