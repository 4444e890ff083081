import type { Isometry } from '../geometry/types.ts';
import type { Dart, Edge, EdgeNotch, InnerLine, Piece, Side } from './types.ts';
import { reflectionAcross } from '../geometry/isometry.ts';
import { nearestOnSegment } from '../geometry/nearest.ts';
import { line } from '../geometry/segment.ts';
import { chainEnd, chainStart } from '../geometry/chain.ts';
import { mirrorChain } from '../geometry/chain-moved.ts';
import { isFinished } from './finished.ts';
import { otherId } from './other-id.ts';
import { bothLandmarks } from './both-landmarks.ts';
import { endAt, startAt } from './outline.ts';
import { type Outcome, done, refuse } from './outcome.ts';
import { openPart, openPiece, withEdge } from './with.ts';
import { withDart, withNotch } from './with-marks.ts';

/** How far (mm) an edge may stray from its chord and still count as straight. */
const STRAIGHT = 1e-6;

const isStraight = (e: Edge): boolean => {
  if (e.chain.length === 1 && e.chain[0]!.kind === 'line') return true;
  const chord = line(chainStart(e.chain), chainEnd(e.chain));
  return e.chain.every((s) =>
    (s.kind === 'line' ? [s.a, s.d] : [s.a, s.b, s.c, s.d]).every(
      (p) => nearestOnSegment(chord, p).distance <= STRAIGHT,
    ),
  );
};

const otherSide = (s: Side): Side => (s === 'right' ? 'left' : s === 'left' ? 'right' : 'centre');

/**
 * The half front and its mirror image across the straight edge `about`, joined there; the edge becomes an inner line. Any straight
 * edge may be taken: about another one than centre front the result is the shape that comes of it. Refusals: `no-such-edge`,
 * `edge-not-straight`, `edge-is-dart-leg`, `already-finished`, `already-opened`, `already-cut`.
 */
export function openOut(front: Piece, about: string): Outcome<Piece> {
  if (isFinished(front)) return refuse('already-finished');
  const part = front.parts[0]!;
  if (front.parts.length > 1 || front.hinges.length > 0) return refuse('already-cut');
  if (part.edges.some((e) => e.side === 'left')) return refuse('already-opened');
  const at = part.edges.findIndex((e) => e.id === about);
  if (at < 0) return refuse('no-such-edge', { edge: about });
  const fold = part.edges[at]!;
  if (fold.role === 'dart-leg') return refuse('edge-is-dart-leg', { edge: about });
  if (!isStraight(fold)) return refuse('edge-not-straight', { edge: about });

  const p = chainStart(fold.chain);
  const q = chainEnd(fold.chain);
  const mirror = reflectionAcross(p, q);
  const ours = [...part.edges.slice(at + 1), ...part.edges.slice(0, at)];
  const theirs = ours.map((_, i) => mirrored(ours[ours.length - 1 - i]!, mirror));
  // The ends of the fold lie on the axis and stay where they are, bit for bit.
  theirs[0] = withEdge(theirs[0]!, { chain: startAt(theirs[0]!.chain, p) });
  const last = theirs.length - 1;
  theirs[last] = withEdge(theirs[last]!, { chain: endAt(theirs[last]!.chain, q) });

  const centre: InnerLine = {
    id: about,
    kind: 'centre-front',
    chain: fold.chain,
    origin: fold.origin,
    dart: undefined,
    notches: [],
    line: undefined,
    foot: undefined,
    faults: undefined,
  };
  const opened = openPart(part);
  opened.edges = [...ours, ...theirs];
  opened.lines = [...part.lines, centre];
  opened.landmarks = bothLandmarks(part.landmarks, mirror, p, q);
  const next = openPiece(front);
  next.parts = [opened];
  next.darts = [...front.darts, ...front.darts.map(mirroredDart)];
  next.notches = [...front.notches.filter((n) => n.edge !== about), ...mirroredNotches(front.notches, ours)];
  return done(next);
}

function mirrored(e: Edge, m: Isometry): Edge {
  const id = otherId(e.id);
  return {
    id,
    role: e.role,
    side: otherSide(e.side),
    chain: mirrorChain(e.chain, m),
    origin: { edge: id, from: 0, to: e.origin.to - e.origin.from },
    partner: e.role === 'dart-leg' && e.partner !== undefined ? otherId(e.partner) : e.partner,
    dart: e.dart === undefined ? undefined : otherId(`${e.dart}/`).slice(0, -1),
  };
}

const mirroredDart = (d: Dart): Dart =>
  withDart(d, {
    id: otherId(`${d.id}/`).slice(0, -1),
    side: otherSide(d.side),
    upper: otherId(d.upper),
    lower: otherId(d.lower),
    bustPoint: otherId(d.bustPoint),
  });

function mirroredNotches(notches: readonly EdgeNotch[], edges: readonly Edge[]): EdgeNotch[] {
  const out: EdgeNotch[] = [];
  for (const n of notches) {
    const e = edges.find((x) => x.id === n.edge);
    if (e === undefined) continue;
    const length = e.origin.to - e.origin.from;
    out.push(
      withNotch(n, { id: otherId(n.id), edge: otherId(n.edge), line: otherId(n.line), at: length - n.at }),
    );
  }
  return out;
}
