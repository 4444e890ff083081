import type { EdgeNotch, Hinge, Part, Piece } from './types.ts';
import { shortSort } from '../geometry/short-sort.ts';
import { cutPart, followSplits } from './cut.ts';
import { isFinished } from './finished.ts';
import { boundaries, cutAlong } from './line-cut.ts';
import { findDart, partOf } from './outline.ts';
import { type Outcome, done, refuse } from './outcome.ts';
import { findLine } from './style-line.ts';
import { openPart, openPiece } from './with.ts';

/**
 * Cuts what is not yet cut of the line and parts the piece in two: `upper` is the one with the neck at centre front, `lower` the
 * other. Works before or after any slash and gives the same edge ids either way. Refusals: `already-finished`, `no-such-line`, the code of
 * the line's own fault, `cut-off-outline`, `still-one-piece` when the sheets still hang together.
 */
export function separate(piece: Piece, lineId: string): Outcome<readonly [upper: Piece, lower: Piece]> {
  if (isFinished(piece)) return refuse('already-finished', { line: lineId });
  const all = boundaries(piece, lineId);
  if (all.length === 0) return refuse('no-such-line', { line: lineId });
  let parts = piece.parts;
  let hinges = piece.hinges;
  let notches = piece.notches;
  for (let round = 0; ; round++) {
    const found = findLine({ parts }, lineId);
    if (found === undefined) break;
    const { part, line: style } = found;
    const fault = style.faults?.[0];
    if (fault !== undefined) return refuse(fault.code, { line: lineId });
    const along = cutAlong(part, style, all, style.origin.from, style.origin.to);
    if (along === undefined) return refuse('no-such-line', { line: lineId });
    const bare = openPart(part);
    bare.lines = part.lines.filter((l) => l !== style);
    const cut = cutPart(bare, along.stretches);
    if ('refused' in cut) return cut;
    // Two sheets from one: both need a name of their own until they are sorted.
    const left = openPart(cut.ok.left);
    left.id = `${part.id}-${round}a`;
    const right = openPart(cut.ok.right);
    right.id = `${part.id}-${round}b`;
    const sheets: Part[] = parts.slice();
    sheets.splice(sheets.indexOf(part), 1, left, right);
    parts = sheets;
    hinges = hinges.map((h) => rehung(h, part.id, [left, right], piece));
    notches = followSplits([...notches, ...along.notches], cut.ok.split);
  }
  const cutUp = openPiece(piece);
  cutUp.parts = parts;
  cutUp.hinges = hinges;
  cutUp.notches = notches;
  return sortOut(cutUp, lineId);
}

/** The hinge with the cut part's name replaced by that of the half with the dart's leg. */
function rehung(h: Hinge, cutId: string, halves: readonly Part[], piece: Piece): Hinge {
  const at = h.parts.indexOf(cutId);
  const dart = findDart(piece, h.dart);
  if (at < 0 || dart === undefined) return h;
  const half = halves.find((p) => p.edges.some((e) => e.id === dart.upper || e.id === dart.lower));
  if (half === undefined) return h;
  const { dart: id, intact } = h;
  return { dart: id, parts: at === 0 ? [half.id, h.parts[1]] : [h.parts[0], half.id], intact };
}

/** The sheets in two pieces: what hangs together with the neck, and the rest. */
function sortOut(piece: Piece, lineId: string): Outcome<readonly [Piece, Piece]> {
  const neck = piece.parts.find((p) => p.landmarks['neck-centre'] !== undefined) ?? piece.parts[0]!;
  const up = new Set([neck.id]);
  for (let grew = true; grew;) {
    grew = false;
    for (const {
      parts: [a, b],
    } of piece.hinges) {
      if (up.has(a) === up.has(b)) continue;
      up.add(a).add(b);
      grew = true;
    }
  }
  const upper = piece.parts.filter((p) => up.has(p.id));
  const lower = piece.parts.filter((p) => !up.has(p.id));
  if (lower.length === 0) return refuse('still-one-piece', { line: lineId });
  return done([asPiece(piece, 'upper', upper), asPiece(piece, 'lower', lower)]);
}

function asPiece(piece: Piece, id: string, parts: readonly Part[]): Piece {
  // The sheet that was the whole piece's takes the new piece's name; freed ones keep theirs.
  const main = parts.find((p) => !p.id.startsWith('freed-')) ?? parts[0]!;
  const named = openPart(main);
  named.id = id;
  const sheets: Part[] = [named];
  for (const p of parts) if (p !== main) sheets.push(p);
  const hinges: Hinge[] = [];
  for (const { dart, parts: pair, intact } of piece.hinges) {
    const [a, b] = pair;
    if (!parts.some((p) => p.id === a)) continue;
    hinges.push({ dart, parts: [a === main.id ? id : a, b === main.id ? id : b], intact });
  }
  const next = openPiece(piece);
  next.id = id;
  next.parts = sheets;
  next.hinges = hinges;
  next.darts = piece.darts.filter((d) => partOf(next, d.upper) !== undefined);
  next.notches = shortSort(
    piece.notches.filter((n) => partOf(next, n.edge) !== undefined),
    inOrder,
  );
  return next;
}

/** By edge and place, so that it does not matter in which order the line was cut. */
const inOrder = (m: EdgeNotch, n: EdgeNotch): number =>
  m.edge < n.edge ? -1 : m.edge > n.edge ? 1 : m.at - n.at;
