import type { Edge, EdgeNotch, Piece } from './types.ts';
import { splitChain, subchain } from '../geometry/subchain.ts';
import { segmentLength } from '../geometry/length.ts';
import { nearestOnSegment } from '../geometry/nearest.ts';
import { distance } from '../geometry/point.ts';
import { tangentAt } from '../geometry/segment.ts';
import { blend } from './bridge.ts';
import { edgeLength } from './edge-length.ts';
import { endAt, landmark, outlineOf, startAt } from './outline.ts';
import { type Outcome, done, refuse } from './outcome.ts';
import { withEdge, withPiece } from './with.ts';
import { withNotch } from './with-marks.ts';

/** A landmark this near (mm) to a corner of the outline is that corner. */
const AT_CORNER = 1e-6;
/** What must be left of an edge, mm. */
const LEAST = 1e-3;

/**
 * Smooths the corner that a seam makes at a landmark, such as the bust point in a princess seam: `reach` mm of the seam on either side
 * give way to one curve that runs smoothly into both; further away nothing changes. Both edges keep their names and meet in the
 * curve's middle. The record says how far the seam moved and how much shorter it became. Refusals: `no-such-landmark`,
 * `no-seam-corner` when no two edges of one line meet there, `bad-length`, `reach-too-long` (`room` mm), `smooth-covers-notch`.
 */
export function smoothSeam(piece: Piece, at: string, reach: number): Outcome<Piece> {
  if (!(reach > 0 && reach < 1e6)) return refuse('bad-length', { reach });
  const p = landmark(piece, at);
  if (p === undefined) return refuse('no-such-landmark', { landmark: at });
  const outline = outlineOf(piece);
  const n = outline.length;
  const j = outline.findIndex((e, i) => {
    const before = outline[(i + n - 1) % n]!;
    const meet = distance(e.chain[0]!.a, p) <= AT_CORNER;
    return (
      meet && e.role === 'style-line' && before.role === 'style-line' && before.origin.edge === e.origin.edge
    );
  });
  if (j < 0) return refuse('no-seam-corner', { landmark: at });
  const into = outline[(j + n - 1) % n]!;
  const outOf = outline[j]!;
  const corner = outOf.chain[0]!.a;
  const inLength = edgeLength(into);
  const outLength = edgeLength(outOf);
  const room = Math.min(inLength, outLength) - LEAST;
  if (reach > room) return refuse('reach-too-long', { room });
  // A notch at the corner itself goes with it, to where both edges meet on the curve.
  const atCorner = (m: EdgeNotch): boolean =>
    (m.edge === into.id && m.at >= inLength - AT_CORNER) || (m.edge === outOf.id && m.at <= AT_CORNER);
  const covered = piece.notches.find(
    (m) =>
      m.ghost !== true &&
      !atCorner(m) &&
      ((m.edge === into.id && m.at > inLength - reach) || (m.edge === outOf.id && m.at < reach)),
  );
  if (covered !== undefined) return refuse('smooth-covers-notch', { notch: covered.id });

  const head = subchain(into.chain, 0, inLength - reach);
  const tail = subchain(outOf.chain, reach, outLength);
  const last = head[head.length - 1]!;
  const first = tail[0]!;
  const curve = blend(last.d, tangentAt(last, 1), first.a, tangentAt(first, 0));
  const length = segmentLength(curve);
  const [one, other] = splitChain([curve], length / 2);
  const joint = one[one.length - 1]!.d;
  const edges = new Map<Edge, Edge>([
    [into, withEdge(into, { chain: [...head, ...endAt(one, joint)] })],
    [outOf, withEdge(outOf, { chain: [...startAt(other, joint), ...tail] })],
  ]);
  const shift = length / 2 - reach;
  const smoothed = [
    ...(piece.smoothed ?? []),
    { at, reach, moved: nearestOnSegment(curve, corner).distance, shorter: 2 * reach - length },
  ];
  return done(
    withPiece(piece, {
      seam: outline.map((e) => edges.get(e) ?? e),
      notches: piece.notches.map((m) => {
        if (!m.ghost && atCorner(m)) return withNotch(m, { at: m.edge === outOf.id ? 0 : inLength + shift });
        return m.edge === outOf.id ? withNotch(m, { at: m.at + shift }) : m;
      }),
      smoothed,
    }),
  );
}
