import type { Edge, InnerLine, Part, Piece } from './types.ts';

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
