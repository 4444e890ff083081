import type { Dart, Edge, EdgeNotch, InnerLine, Part, Piece } from './types.ts';

/*
 * Changed copies of the records that nearly every operation copies. Each is written out, all fields in one order, so that engines
 * see one kind of record: an object spread makes a kind of its own in every place that spreads, and after a handful of them
 * each look at a field is a search.
 */

/** The edge with some fields changed. */
export const withEdge = (e: Edge, c: Partial<Edge>): Edge => ({
  id: c.id ?? e.id,
  role: c.role ?? e.role,
  side: c.side ?? e.side,
  chain: c.chain ?? e.chain,
  origin: c.origin ?? e.origin,
  partner: c.partner ?? e.partner,
  dart: c.dart ?? e.dart,
  leg: c.leg ?? e.leg,
});

/** The part with some fields changed. */
export const withPart = (p: Part, c: Partial<Part>): Part => ({
  id: c.id ?? p.id,
  edges: c.edges ?? p.edges,
  lines: c.lines ?? p.lines,
  landmarks: c.landmarks ?? p.landmarks,
  grain: c.grain ?? p.grain,
  motion: c.motion ?? p.motion,
});

/** The piece with some fields changed. */
export const withPiece = (p: Piece, c: Partial<Piece>): Piece => ({
  id: c.id ?? p.id,
  parts: c.parts ?? p.parts,
  hinges: c.hinges ?? p.hinges,
  darts: c.darts ?? p.darts,
  notches: c.notches ?? p.notches,
  seam: c.seam ?? p.seam,
  treatments: c.treatments ?? p.treatments,
  finished: c.finished ?? p.finished,
  fullness: c.fullness ?? p.fullness,
  smoothed: c.smoothed ?? p.smoothed,
  allowances: c.allowances ?? p.allowances,
  corners: c.corners ?? p.corners,
  notchesCarried: c.notchesCarried ?? p.notchesCarried,
  label: c.label ?? p.label,
  grainline: c.grainline ?? p.grainline,
});

/** A record of that type with all its fields named, open to be written to by the operation that makes it. */
export type Open<T> = { -readonly [K in keyof T]-?: T[K] };

/**
 * A copy of the piece of which an operation sets fields before it hands the piece on: quicker than `withPiece`, for what is done
 * again and again.
 */
export const openPiece = (p: Piece): Open<Piece> => ({
  id: p.id,
  parts: p.parts,
  hinges: p.hinges,
  darts: p.darts,
  notches: p.notches,
  seam: p.seam,
  treatments: p.treatments,
  finished: p.finished,
  fullness: p.fullness,
  smoothed: p.smoothed,
  allowances: p.allowances,
  corners: p.corners,
  notchesCarried: p.notchesCarried,
  label: p.label,
  grainline: p.grainline,
});

/** The same for a part. */
export const openPart = (p: Part): Open<Part> => ({
  id: p.id,
  edges: p.edges,
  lines: p.lines,
  landmarks: p.landmarks,
  grain: p.grain,
  motion: p.motion,
});

/** The piece with other parts. */
export function withParts(p: Piece, parts: readonly Part[]): Piece {
  const next = openPiece(p);
  next.parts = parts;
  return next;
}

/** The part with other lines drawn on it. */
export function withLines(p: Part, lines: readonly InnerLine[]): Part {
  const next = openPart(p);
  next.lines = lines;
  return next;
}

/** The piece with other allowances. */
export function withAllowances(p: Piece, allowances: Piece['allowances']): Piece {
  const next = openPiece(p);
  next.allowances = allowances;
  return next;
}

/** The piece with other corners. */
export function withCorners(p: Piece, corners: Piece['corners']): Piece {
  const next = openPiece(p);
  next.corners = corners;
  return next;
}

/** The piece before any treatment of its seam. */
export function withoutSeam(p: Piece): Piece {
  const next = openPiece(p);
  next.seam = undefined;
  return next;
}

/** The inner line with some fields changed. */
export const withLine = (l: InnerLine, c: Partial<InnerLine>): InnerLine => ({
  id: c.id ?? l.id,
  kind: c.kind ?? l.kind,
  chain: c.chain ?? l.chain,
  origin: c.origin ?? l.origin,
  dart: c.dart ?? l.dart,
  notches: c.notches ?? l.notches,
  line: c.line ?? l.line,
  foot: c.foot ?? l.foot,
  faults: c.faults ?? l.faults,
});

/** The dart with some fields changed. */
export const withDart = (d: Dart, c: Partial<Dart>): Dart => ({
  id: c.id ?? d.id,
  side: c.side ?? d.side,
  state: c.state ?? d.state,
  upper: c.upper ?? d.upper,
  lower: c.lower ?? d.lower,
  bustPoint: c.bustPoint ?? d.bustPoint,
  residual: c.residual ?? d.residual,
});

/** The notch with some fields changed. */
export const withNotch = (n: EdgeNotch, c: Partial<EdgeNotch>): EdgeNotch => ({
  id: c.id ?? n.id,
  at: c.at ?? n.at,
  ghost: c.ghost ?? n.ghost,
  edge: c.edge ?? n.edge,
  line: c.line ?? n.line,
});

/**
 * A table with one entry set. Copied entry by entry, as engines take the long way when something is added to what was spread; ids (see
 * the form `id` of a command's key) are never a name that setting treats in another way.
 */
export function withEntry<T>(table: Readonly<Record<string, T>>, key: string, value: T): Record<string, T> {
  const out: Record<string, T> = {};
  for (const known in table) out[known] = table[known]!;
  out[key] = value;
  return out;
}
