import { chainEnd, chainStart } from '../geometry/chain.ts';
import { distance } from '../geometry/point.ts';
import { edgeLength } from './edge-length.ts';
import { afterSlash, outlineOf } from './outline.ts';
import type { Edge, EdgeNotch, Piece, Treatment } from './types.ts';
import { openPiece } from './with.ts';

/** One edge of a style seam as it is sewn, or (no edge) an opening, which counts with its straight width. */
export interface Stretch {
  readonly edge: Edge | undefined;
  /** The dart whose connector opens or was bridged here. */
  readonly dart: string | undefined;
  /** Start in mm along the seam, in the direction of the drawn line; length in mm. */
  readonly from: number;
  readonly length: number;
}

/** A piece's edge along a style line. */
export interface StyleSeam {
  readonly line: string;
  readonly bank: 'a' | 'b';
  /** Where it begins in `outline`, and how many edges (connector banks counted) it takes there. */
  readonly outline: readonly Edge[];
  readonly first: number;
  readonly count: number;
  /** In the direction of the drawn line: against the outline on bank a. */
  readonly stretches: readonly Stretch[];
  readonly length: number;
}

export const bridgeId = (dart: string): string => `bridge-${dart}`;

export function treatmentOf(piece: Piece, dart: string): Treatment | undefined {
  for (const t of piece.treatments) if (t.dart === dart) return t;
  return undefined;
}

/** The piece with its treatment of a dart's leftover added or replaced, and with the seam and notches that come of it. */
export function withTreatment(
  piece: Piece,
  t: Required<Treatment>,
  seam = piece.seam,
  notches = piece.notches,
): Piece {
  const next = openPiece(piece);
  const treatments = piece.treatments.filter((other) => other.dart !== t.dart);
  treatments.push(t);
  next.treatments = treatments;
  next.seam = seam;
  next.notches = notches;
  return next;
}

/** Which bank of a cut line an edge is, by its id: `line/2/a`, `line/2/b.1`. The piece on bank b lies clockwise along the line. */
export function bankOf(edge: Edge): 'a' | 'b' | undefined {
  if (edge.role !== 'style-line') return undefined;
  const { id } = edge;
  const at = afterSlash(id);
  const bank = id.charAt(at);
  const ends = at + 1 === id.length || id.charAt(at + 1) === '.';
  return at > 0 && ends && (bank === 'a' || bank === 'b') ? bank : undefined;
}

/**
 * Index in an outline of the first of a dart's two connector banks that stand between two edges of one bank of a line, or
 * −1. (Before the line is cut apart the connector leads from one bank to the other: that is a slash, not an opening.)
 */
export function openingIn(outline: readonly Edge[], dart?: string): number {
  const n = outline.length;
  for (let i = 0; i < n; i++) {
    const c = outline[i]!;
    const k = outline[(i + 1) % n]!;
    if (c.role !== 'connector' || k.role !== 'connector' || c.dart !== k.dart) continue;
    if (dart !== undefined && c.dart !== dart) continue;
    const prev = outline[(i + n - 1) % n]!;
    const next = outline[(i + 2) % n]!;
    if (prev.role !== 'style-line' || next.role !== 'style-line') continue;
    if (lineBank(prev, outline) === lineBank(next, outline)) return i;
  }
  return -1;
}

/** A bridge has no bank in its id; all edges of a separated piece along one line lie on the same bank. */
function lineBank(edge: Edge, outline: readonly Edge[]): string | undefined {
  if (bankOf(edge) !== undefined) return bankOf(edge);
  const other = outline.find((e) => e.origin.edge === edge.origin.edge && bankOf(e) !== undefined);
  return other && bankOf(other);
}

/**
 * The piece's edge along a style line (the first one it has when `line` is left out), or undefined when it has none or when
 * both banks still hang together.
 */
export function styleSeam(piece: Piece, line?: string): StyleSeam | undefined {
  const outline = outlineOf(piece);
  const n = outline.length;
  let first = -1;
  let before = outline[n - 1]!;
  for (let i = 0; i < n && first < 0; i++) {
    const e = outline[i]!;
    if (onLine(e, line) && !onLine(before, line) && !opensAt(outline, i + n - 2, line)) first = i;
    before = e;
  }
  if (first < 0) return undefined;
  const name = outline[first]!.origin.edge;
  const found: { edge: Edge | undefined; dart: string | undefined; from: number; length: number }[] = [];
  let bank: 'a' | 'b' | undefined;
  let count = 0;
  while (count < n) {
    const e = outline[(first + count) % n]!;
    if (onLine(e, name)) {
      const own = bankOf(e);
      if (own !== undefined && bank !== undefined && own !== bank) return undefined;
      bank ??= own;
      found.push({ edge: e, dart: own === undefined ? e.dart : undefined, from: 0, length: edgeLength(e) });
      count += 1;
      continue;
    }
    if (!opensAt(outline, first + count, name)) break;
    const k = outline[(first + count + 1) % n]!;
    const length = distance(chainStart(e.chain), chainEnd(k.chain));
    found.push({ edge: undefined, dart: e.dart, from: 0, length });
    count += 2;
  }
  if (bank === undefined) return undefined;
  if (bank === 'a') found.reverse();
  let length = 0;
  for (const s of found) {
    s.from = length;
    length += s.length;
  }
  return { line: name, bank, outline, first, count, stretches: found, length };
}

/**
 * Whether the two banks of one connector stand at index i, between two edges of the line. (Where the foot lies on an end of the
 * line they stand at the corner beyond it, and the seam has no opening.)
 */
function opensAt(outline: readonly Edge[], i: number, line: string | undefined): boolean {
  const n = outline.length;
  const c = outline[i % n]!;
  if (c.role !== 'connector') return false;
  const k = outline[(i + 1) % n]!;
  if (k.role !== 'connector' || c.dart !== k.dart) return false;
  return onLine(outline[(i + n - 1) % n]!, line) && onLine(outline[(i + 2) % n]!, line);
}

const onLine = (e: Edge, line: string | undefined): boolean =>
  e.role === 'style-line' && (line === undefined || e.origin.edge === line);

/** The seam that a dart's bridge lies in. */
export function bridgedSeam(
  piece: Piece,
  dart: string,
): { readonly seam: StyleSeam; readonly arch: Stretch } | undefined {
  const edge = piece.seam?.find((e) => e.id === bridgeId(dart));
  const seam = edge && styleSeam(piece, edge.origin.edge);
  const arch = seam?.stretches.find((s) => s.edge === edge);
  return seam && arch && { seam, arch };
}

/** Where a notch stands, mm along the seam in the direction of the line; undefined when it is not on this seam. */
export function notchAlong(seam: StyleSeam, notch: EdgeNotch): number | undefined {
  const s = seam.stretches.find((x) => x.edge?.id === notch.edge);
  if (s === undefined) return undefined;
  return s.from + (seam.bank === 'a' ? s.length - notch.at : notch.at);
}

/** The edge, and mm from the start of its chain, of a place given in mm along the seam; undefined off the seam or in an opening. */
export function placeOnSeam(
  seam: StyleSeam,
  along: number,
): { readonly edge: string; readonly at: number } | undefined {
  if (!(along >= 0 && along <= seam.length)) return undefined;
  for (const s of seam.stretches) {
    if (along > s.from + s.length && s !== seam.stretches[seam.stretches.length - 1]) continue;
    if (s.edge === undefined) return undefined;
    const own = along - s.from;
    return { edge: s.edge.id, at: seam.bank === 'a' ? s.length - own : own };
  }
  return undefined;
}
