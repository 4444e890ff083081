import type { Point } from '../geometry/types.ts';
import type { Dart, Edge, FinishedDart, Piece } from './types.ts';
import { chainEnd, chainStart } from '../geometry/chain.ts';
import { findDart, outlineOf } from './outline.ts';
import { type Outcome, done, refuse } from './outcome.ts';
import { withEdge, withPart, withPiece } from './with.ts';

/** Where a dart opens the outline of its piece. */
export interface Mouth {
  readonly dart: Dart;
  /** The whole outline, turned so that what stands in the dart comes first. */
  readonly outline: readonly Edge[];
  /** How many edges stand in the dart: its legs (with the gap between them where they slipped apart), or its cap. */
  readonly count: number;
  /** Where the outline runs into the dart, and where it runs on. */
  readonly start: Point;
  readonly end: Point;
}

/** Whether an edge is a leg or the cap of a dart (of that one, when it is named). */
export const standsIn = (e: Edge, dart?: string): boolean =>
  (e.role === 'dart-leg' || e.role === 'cap') &&
  e.dart !== undefined &&
  (dart === undefined || e.dart === dart);

/**
 * Where a dart opens the outline as it now runs. Refusals: `no-such-dart`, `dart-is-closed`, `already-gathered` when its opening was
 * drawn over.
 */
export function mouthOf(piece: Piece, dartId: string): Outcome<Mouth> {
  const dart = findDart(piece, dartId);
  if (dart === undefined) return refuse('no-such-dart', { dart: dartId });
  if (dart.state === 'closed') return refuse('dart-is-closed', { dart: dartId });
  if (piece.fullness?.some((f) => f.darts.includes(dartId)))
    return refuse('already-gathered', { dart: dartId });
  const edges = outlineOf(piece);
  const n = edges.length;
  const first = edges.findIndex((e, i) => standsIn(e, dartId) && !standsIn(edges[(i + n - 1) % n]!, dartId));
  if (first < 0) return refuse('no-such-dart', { dart: dartId });
  const outline = [...edges.slice(first), ...edges.slice(0, first)];
  let count = 1;
  while (count < n && standsIn(outline[count]!, dartId)) count++;
  // Legs in two places would be two mouths: an outline that a cut left so is not to be finished.
  if (outline.slice(count).some((e) => standsIn(e, dartId))) return refuse('no-such-dart', { dart: dartId });
  return done({
    dart,
    outline,
    count,
    start: chainStart(outline[0]!.chain),
    end: chainEnd(outline[count - 1]!.chain),
  });
}

/** The edge before a mouth in the outline, and the one after it. */
export const besideMouth = ({ outline, count }: Mouth): readonly [before: Edge, after: Edge] => [
  outline[outline.length - 1]!,
  outline[count]!,
];

/** The outline with other edges in a mouth, and the rest of it as `change` leaves it (undefined: left out). */
export function withMouth(
  { outline, count }: Mouth,
  inMouth: readonly Edge[],
  change: (e: Edge) => Edge | undefined = (e) => e,
): Edge[] {
  const out = [...inMouth];
  for (let i = count; i < outline.length; i++) {
    const e = change(outline[i]!);
    if (e !== undefined) out.push(e);
  }
  return out;
}

/** What is known of how a dart was drawn to sew it. */
export const finishedDart = (piece: Piece, dart: string): FinishedDart | undefined =>
  piece.finished?.find((f) => f.dart === dart);

/** The piece with that record in place of an earlier one of the dart. */
export const withFinished = (piece: Piece, f: FinishedDart): Piece =>
  withPiece(piece, { finished: [...(piece.finished ?? []).filter((o) => o.dart !== f.dart), f] });

/** The piece without the fold lines of these darts, and without the records of how they were drawn. */
export function withoutFinish(piece: Piece, darts: readonly string[]): Piece {
  const gone = (dart: string | undefined): boolean => dart !== undefined && darts.includes(dart);
  const parts = piece.parts.map((p) => {
    const lines = p.lines.filter((l) => !(l.kind === 'fold' && gone(l.dart)));
    return lines.length < p.lines.length ? withPart(p, { lines }) : p;
  });
  const finished = piece.finished?.filter((f) => !gone(f.dart));
  return withPiece(piece, { parts, finished });
}

/** The edge along another chain that counts as its own origin. */
export const redrawn = (e: Edge, chain: Edge['chain'], length: number): Edge =>
  withEdge(e, { chain, origin: { edge: e.id, from: 0, to: length } });
