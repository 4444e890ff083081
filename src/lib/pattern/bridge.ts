import { chainEnd, chainStart } from '../geometry/chain.ts';
import { subchain } from '../geometry/subchain.ts';
import { segmentLength } from '../geometry/length.ts';
import { distance, dot } from '../geometry/point.ts';
import { cubic, tangentAt } from '../geometry/segment.ts';
import type { Cubic, Point } from '../geometry/types.ts';
import { edgeLength } from './edge-length.ts';
import { outlineOf } from './outline.ts';
import { done, refuse, type Outcome } from './outcome.ts';
import { bankOf, bridgeId, openingIn, treatmentOf, withTreatment } from './style-seam.ts';
import type { Edge, Piece } from './types.ts';
import { withEdge } from './with.ts';
import { withNotch } from './with-marks.ts';

/** What must be left of an edge, mm. */
const LEAST = 1e-3;

/**
 * One cubic from p to q that leaves along u and arrives along v (unit vectors). The handles are those of a circular arc of
 * the same chord and turn: 2c / 3(1 + cos(φ/2)), from 4/3·R·tan(φ/4).
 */
export function blend(p: Point, u: Point, q: Point, v: Point): Cubic {
  const half = Math.sqrt(Math.max(0, (1 + dot(u, v)) / 2));
  const h = (2 * distance(p, q)) / (3 * (1 + half));
  return cubic(p, { x: p.x + u.x * h, y: p.y + u.y * h }, { x: q.x - v.x * h, y: q.y - v.y * h }, q);
}

/** A stretch of a line edge with its origin cut down alike; `from` and `to` in mm along its chain of length `length`. */
function shortened(edge: Edge, from: number, to: number, length: number): Edge {
  if (from === 0 && to === length) return edge;
  // The origin counts along the line, the chain of bank a runs against it.
  const [near, far] = bankOf(edge) === 'a' ? [length - to, from] : [from, length - to];
  const { origin } = edge;
  return withEdge(edge, {
    chain: subchain(edge.chain, from, to),
    origin: { edge: origin.edge, from: origin.from + near, to: origin.to - far },
  });
}

/**
 * Bridge the opening of a dart's connector: `before` mm of the seam ahead of it, the connector's two banks and `after` mm
 * behind it (in the direction of the style line) give way to one curve that runs smoothly into both sides. What the seam
 * is then longer by, measured on the edges, is the excess. Notches are never moved: a bridge over one is refused.
 */
export function bridge(piece: Piece, dart: string, before: number, after: number): Outcome<Piece> {
  if (!(before >= 0 && after >= 0 && before < 1e6 && after < 1e6)) {
    return refuse('bad-length', { before, after });
  }
  if (treatmentOf(piece, dart) !== undefined) return refuse('already-bridged', { dart });
  const outline = outlineOf(piece);
  const k = openingIn(outline, dart);
  if (k < 0) return refuse('no-opening', { dart });
  const n = outline.length;
  const prev = outline[(k + n - 1) % n]!;
  const next = outline[(k + 2) % n]!;
  if (!(distance(chainEnd(prev.chain), chainStart(next.chain)) > LEAST))
    return refuse('no-opening', { dart });
  const reversed = (bankOf(prev) ?? bankOf(next)) === 'a';
  const [back, ahead] = reversed ? [after, before] : [before, after];
  const prevLength = edgeLength(prev);
  const nextLength = edgeLength(next);
  if (back > prevLength - LEAST || ahead > nextLength - LEAST) {
    return refuse('bridge-too-long', {
      before: reversed ? nextLength : prevLength,
      after: reversed ? prevLength : nextLength,
    });
  }
  const covered = piece.notches.find(
    (m) =>
      m.ghost !== true &&
      ((m.edge === prev.id && m.at > prevLength - back) || (m.edge === next.id && m.at < ahead)),
  );
  if (covered) return refuse('bridge-covers-notch', { notch: covered.id });

  const head = shortened(prev, 0, prevLength - back, prevLength);
  const tail = shortened(next, ahead, nextLength, nextLength);
  const into = head.chain[head.chain.length - 1]!;
  const out = tail.chain[0]!;
  const curve = blend(into.d, tangentAt(into, 1), out.a, tangentAt(out, 0));
  const [first, second] = reversed ? [tail, head] : [head, tail];
  const arch: Edge = {
    id: bridgeId(dart),
    role: 'style-line',
    side: prev.side,
    chain: [curve],
    origin: { edge: prev.origin.edge, from: first.origin.to, to: second.origin.from },
    partner: undefined,
    dart,
  };
  const seam: Edge[] = [];
  for (let i = 0; i < n; i++) {
    const e = outline[i]!;
    if (e === prev) seam.push(head, arch);
    else if (e === next) seam.push(tail);
    else if (i !== k && i !== (k + 1) % n) seam.push(e);
  }
  const notches =
    ahead > 0
      ? piece.notches.map((m) => (m.edge === next.id ? withNotch(m, { at: m.at - ahead }) : m))
      : piece.notches;
  return done(
    withTreatment(
      piece,
      {
        dart,
        kind: 'bridged',
        excess: segmentLength(curve) - (before + after),
        bridge: { before, after },
        eased: undefined,
        trimmedEnd: undefined,
      },
      seam,
      notches,
    ),
  );
}
