import type { Edge, EdgeNotch, Fullness, FullnessKind, Piece } from './types.ts';
import { subchain } from '../geometry/subchain.ts';
import { segmentLength } from '../geometry/length.ts';
import { tangentAt } from '../geometry/segment.ts';
import { blend } from './bridge.ts';
import { runsBackwards } from './cut.ts';
import { edgeLength } from './edge-length.ts';
import { type Mouth, mouthOf, standsIn, withMouth, withoutFinish } from './mouth.ts';
import { type Outcome, done, isRefused, refuse } from './outcome.ts';
import { tuckLines } from './tucks.ts';
import { withEdge, withPart, withPiece } from './with.ts';
import { withNotch } from './with-marks.ts';

export interface FullnessWish {
  readonly dart: string;
  readonly as: FullnessKind;
  /** Sewn length on either side that the new edge takes the place of, in the direction of the outline, mm. */
  readonly before: number;
  readonly after: number;
  /** How many tucks; needed for tucks only. */
  readonly tucks?: number | undefined;
}

/** What must be left of an edge, mm. */
const LEAST = 1e-3;
/** More tucks than anybody folds. */
const MOST_TUCKS = 99;

/**
 * Leaves a dart's intake as fullness at the edge: the opening, `before` mm of the seam that runs into it and `after` mm of the seam
 * that runs on give way to one curve that runs smoothly into both. Its length less the sewn length that it stands for is the fullness, to be
 * gathered, eased or tucked between two notches at its ends. Other openings of the same seam that lie within that length
 * are drawn over with it. Tucks are pairs of parallel fold lines that take up the fullness in equal parts. No sheet moves. Refusals:
 * those of `mouthOf`, `bad-length`, `bad-count`, `fullness-too-long` (`room` mm on that side), `fullness-covers-notch`,
 * `no-fullness` when the curve would be no longer than what it stands for.
 */
export function addFullness(piece: Piece, wish: FullnessWish): Outcome<Piece> {
  const { dart, as, before, after, tucks } = wish;
  if (!(before >= 0 && after >= 0 && before < 1e6 && after < 1e6))
    return refuse('bad-length', { before, after });
  if (as === 'tucks' && !(tucks !== undefined && tucks >= 1 && tucks <= MOST_TUCKS))
    return refuse('bad-count', { dart });
  const found = mouthOf(piece, dart);
  if (isRefused(found)) return found;
  const mouth = found.ok;
  const back = reach(piece, mouth, -1, before);
  if (isRefused(back)) return back;
  const on = reach(piece, mouth, 1, after);
  if (isRefused(on)) return on;

  const head = back.ok.kept;
  const tail = on.ok.kept;
  const into = head.chain[head.chain.length - 1]!;
  const out = tail.chain[0]!;
  const curve = blend(into.d, tangentAt(into, 1), out.a, tangentAt(out, 0));
  const fullness = segmentLength(curve) - (before + after);
  if (!(fullness > LEAST)) return refuse('no-fullness', { dart });

  const first = back.ok.edge;
  const prefix = first.id.includes('/') ? first.id.slice(0, first.id.indexOf('/') + 1) : '';
  const id = `${prefix}gathered-${dart}`;
  // On a style line the edge must say which line it is sewn along; elsewhere it is its own.
  const origin =
    first.role === 'style-line'
      ? { edge: first.origin.edge, from: head.origin.to, to: head.origin.to + before + after }
      : { edge: id, from: 0, to: before + after };
  const arch: Edge = {
    id,
    role: first.role,
    side: first.side,
    chain: [curve],
    origin,
    partner: undefined,
    dart,
  };
  const gone = new Set([...back.ok.gone, ...on.ok.gone]);
  const seam = withMouth(mouth, [arch], (e) => {
    if (e === back.ok.edge) return head;
    if (e === on.ok.edge) return tail;
    return gone.has(e) ? undefined : e;
  });
  const darts = [...new Set([...back.ok.darts, dart, ...on.ok.darts])];
  const record: Fullness = {
    dart,
    darts,
    as,
    edge: id,
    before,
    after,
    fullness,
    tucks: as === 'tucks' ? tucks : undefined,
  };
  let next = withoutFinish(piece, darts);
  next = withPiece(next, {
    seam,
    notches: [
      ...next.notches.map((m) => (m.edge === tail.id ? withNotch(m, { at: m.at - on.ok.cut }) : m)),
      gatherNotch(dart, 1, id, 0),
      gatherNotch(dart, 2, id, segmentLength(curve)),
    ],
    fullness: [...(next.fullness ?? []), record],
  });
  if (as !== 'tucks') return done(next);
  const lines = tuckLines(next, mouth, arch, record);
  const home = next.parts.find((p) => p.edges.some((e) => e.id === mouth.dart.upper));
  return done(
    withPiece(next, {
      parts: next.parts.map((p) => (p === home ? withPart(p, { lines: [...p.lines, ...lines] }) : p)),
    }),
  );
}

const gatherNotch = (dart: string, n: 1 | 2, edge: string, at: number): EdgeNotch => ({
  id: `${dart}-gather-${n}`,
  at,
  ghost: undefined,
  edge,
  line: edge,
});

interface Reach {
  /** The edge in which the new one begins or ends, and what is kept of it. */
  readonly edge: Edge;
  readonly kept: Edge;
  /** mm cut off that edge. */
  readonly cut: number;
  /** Edges that go altogether, and the darts whose openings are among them. */
  readonly gone: readonly Edge[];
  readonly darts: readonly string[];
}

/** What `mm` of the sewn seam take away on one side of a mouth; `step` −1: of the seam that runs into it. */
function reach(piece: Piece, { outline, count }: Mouth, step: 1 | -1, mm: number): Outcome<Reach> {
  const n = outline.length;
  const own = outline[step === 1 ? count : n - 1]!;
  const gone: Edge[] = [];
  const darts: string[] = [];
  let left = mm;
  for (let i = step === 1 ? count : n - 1; i >= count && i < n; i += step) {
    const e = outline[i]!;
    if (standsIn(e)) {
      gone.push(e);
      if (!darts.includes(e.dart!)) darts.push(e.dart!);
      continue;
    }
    if (e.role !== own.role || e.side !== own.side) break;
    const drawnOver = piece.fullness?.find((f) => f.edge === e.id);
    if (drawnOver !== undefined && left > 0) return refuse('already-gathered', { dart: drawnOver.dart });
    const length = edgeLength(e);
    const cut = Math.min(left, length);
    const covered = piece.notches.find(
      (m) => m.edge === e.id && m.ghost !== true && (step === 1 ? m.at < cut : m.at > length - cut),
    );
    if (covered !== undefined) return refuse('fullness-covers-notch', { notch: covered.id });
    if (left <= length - LEAST)
      return done({ edge: e, kept: shortened(e, step, cut, length), cut, gone, darts });
    gone.push(e);
    left -= length;
  }
  return refuse('fullness-too-long', { room: mm - left });
}

/** The edge without the `mm` next to the mouth; its origin is cut down alike. */
function shortened(e: Edge, step: 1 | -1, mm: number, length: number): Edge {
  if (mm <= 0) return e;
  const chain = step === 1 ? subchain(e.chain, mm, length) : subchain(e.chain, 0, length - mm);
  const { edge, from, to } = e.origin;
  const atStart = runsBackwards(e) ? step === -1 : step === 1;
  return withEdge(e, {
    chain,
    origin: atStart ? { edge, from: from + mm, to } : { edge, from, to: to - mm },
  });
}
