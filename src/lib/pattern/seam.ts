import { chainEnd, chainStart } from '../geometry/chain.ts';
import { line as straight } from '../geometry/segment.ts';
import { shortSort } from '../geometry/short-sort.ts';
import type { Chain } from '../geometry/types.ts';
import { piecesOf } from './copy.ts';
import { backFor, frontAndBack, seamName } from './front-back.ts';
import { outlineOf } from './outline.ts';
import {
  byPlace,
  forward,
  type Fulled,
  LazyRun,
  type Seam,
  type SeamMark,
  type SeamMarks,
  type SeamRun,
} from './seam-run.ts';
import { notchAlong, styleSeam, treatmentOf, type StyleSeam } from './style-seam.ts';
import type { Edge, Piece } from './types.ts';

export type { Seam, SeamMark, SeamMarks, SeamRun } from './seam-run.ts';
export { backFor } from './front-back.ts';

/** The edge that an edge is sewn to, in another piece of the same set (an edge of a cut line: its other bank). */
export function seamPartner(
  pieces: readonly Piece[],
  edgeId: string,
): { readonly piece: Piece; readonly edge: Edge } | undefined {
  const named = pieces.flatMap((piece) => outlineOf(piece).map((edge) => ({ piece, edge })));
  const own = named.find((x) => x.edge.id === edgeId);
  const partner = own?.edge.partner;
  return partner === undefined ? undefined : named.find((x) => x.edge.id === partner);
}

/** A piece's side of a style line. */
export function styleRun(piece: Piece, line?: string): SeamRun | undefined {
  const seam = styleSeam(piece, line);
  return seam && runOf(piece, seam);
}

function runOf(piece: Piece, seam: StyleSeam): SeamRun {
  return new LazyRun(seamMarks(piece, seam), [piece.id], () => courseOf(seam));
}

function courseOf({ bank, stretches }: StyleSeam): Chain[] {
  const reversed = bank === 'a';
  return stretches.map((s, i) => {
    if (s.edge) return forward(s.edge.chain, reversed);
    const before = stretches[i - 1]!.edge!.chain;
    const after = stretches[i + 1]!.edge!.chain;
    return reversed
      ? [straight(chainStart(before), chainEnd(after))]
      : [straight(chainEnd(before), chainStart(after))];
  });
}

/** What a walk along a piece's side of a style line meets. */
export function seamMarks(piece: Piece, seam: StyleSeam): SeamMarks {
  const joints: SeamMark[] = [];
  const openings: { dart: string; from: number; to: number }[] = [];
  const whole = !piece.treatments.some((t) => t.kind === 'trimmed');
  const fulled: Fulled[] = [];
  let eased: SeamRun['eased'];
  for (let i = 0; i < seam.stretches.length; i++) {
    const s = seam.stretches[i]!;
    const before = i > 0 ? seam.stretches[i - 1] : undefined;
    if (s.dart !== undefined) {
      openings.push({ dart: s.dart, from: s.from, to: s.from + s.length });
      const full = piece.fullness?.find((f) => f.edge === s.edge?.id);
      if (full !== undefined) fulled.push({ from: s.from, to: s.from + s.length, amount: full.fullness });
      const t = treatmentOf(piece, s.dart);
      if (t?.kind === 'eased' && t.eased) eased = { from: t.eased.from, to: t.eased.to, amount: t.excess };
    } else if (whole && before?.edge && before.dart === undefined) {
      joints.push({ id: before.edge.id.slice(0, before.edge.id.lastIndexOf('/')), at: s.from });
    }
  }
  const notches: SeamMark[] = [];
  for (const m of piece.notches) {
    const at = m.ghost ? undefined : notchAlong(seam, m);
    if (at !== undefined) notches.push({ id: m.id, at });
  }
  return { notches: shortSort(notches, byPlace), joints, openings, length: seam.length, eased, fulled };
}

/**
 * Both sides of a seam: 'style-line' (a: the piece on the left hand of someone who walks the line, b: the other), or
 * 'right/shoulder', 'left/shoulder', 'right/side', 'left/side' (a: the front, b: the back). `as` picks the set of pieces
 * that was copied for a fabric. Undefined when a side is not there (yet).
 */
export function seamOf(pieces: readonly Piece[], name: string, as?: string): Seam | undefined {
  const known = knownOf(pieces);
  for (const k of known.seams) if (k.as === as && k.name === name) return k.seam;
  const seam = sewn(piecesOf(pieces, as), name);
  known.seams.push({ name, as, seam });
  return seam;
}

interface Known {
  readonly pieces: readonly Piece[];
  readonly seams: {
    readonly name: string;
    readonly as: string | undefined;
    readonly seam: Seam | undefined;
  }[];
}

// Pieces never change, and one list of them is asked for its seams again and again: those of the last two lists are kept (the table
// after the treatment, and as it ended).
let last: Known = { pieces: [], seams: [] };
let before: Known = last;

function knownOf(pieces: readonly Piece[]): Known {
  if (last.pieces === pieces) return last;
  const known = before.pieces === pieces ? before : { pieces, seams: [] };
  before = last;
  last = known;
  return known;
}

function sewn(set: readonly Piece[], name: string): Seam | undefined {
  if (name === 'style-line') {
    const sides = styleSides(set);
    return sides && { a: runOf(sides.a.piece, sides.a.seam), b: runOf(sides.b.piece, sides.b.seam) };
  }
  const named = seamName(name);
  const back = named && backFor(set, named.side);
  return back && frontAndBack(set, back, name);
}

/** The two pieces of a set on either bank of their style line. */
export function styleSides(set: readonly Piece[]) {
  const found: { readonly piece: Piece; readonly seam: StyleSeam }[] = [];
  for (const piece of set) {
    const seam = styleSeam(piece);
    if (seam) found.push({ piece, seam });
  }
  const a = found.find((x) => x.seam.bank === 'a');
  const b = a && found.find((x) => x.seam.bank === 'b' && x.seam.line === a.seam.line);
  return a && b && { a, b };
}
