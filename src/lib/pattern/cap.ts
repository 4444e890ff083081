import type { Chain, Point } from '../geometry/types.ts';
import type { Edge, Fold, InnerLine, Piece } from './types.ts';
import { add, distance, scale, sub, unit } from '../geometry/point.ts';
import { chainEnd, chainLength } from '../geometry/chain.ts';
import { reverseChain, transformChain } from '../geometry/chain-moved.ts';
import { subchain } from '../geometry/subchain.ts';
import { intersectChains } from '../geometry/intersect.ts';
import { reflectionAcross } from '../geometry/isometry.ts';
import { line } from '../geometry/segment.ts';
import { sewnDart } from './back-off.ts';
import { runBeside } from './beside.ts';
import { foldsOnStart } from './folds.ts';
import { besideMouth, finishedDart, mouthOf, withFinished, withMouth, withoutFinish } from './mouth.ts';
import { endAt, groupOf, legIds, partOf, startAt } from './outline.ts';
import { type Outcome, done, refuse } from './outcome.ts';
import { ALIKE } from './true-legs.ts';
import { withPart, withPiece } from './with.ts';

/** A cap reaches no further than this many leg lengths from the sewn point: what meets the fold beyond that lies elsewhere. */
const REACH = 2;
/** A crossing this near to the leg's end, mm, is that end. */
const AT_END = 1e-6;

/**
 * Draws the folded cap of a dart: the dart lies folded towards `fold`, so the seam beside its leg there is reflected in that leg, cut
 * where the fold cuts it, and reflected once more in the fold for the other half (read and derived: trade notes, dart theory). The
 * legs as they are sewn and the fold stay as inner lines. The two edges of the cap belong to the seam group of the edge that they
 * lie on when folded. A new cap takes the place of an earlier one. Refusals: those of `mouthOf`, `legs-bent` when the dart was not drawn
 * to a sewn point, `dart-not-open`, `legs-differ` (mm) when they must be trued first, `fold-not-clear` when the mouth does not
 * lie in that direction, `cap-misses-fold` when the seam beside does not reach the fold.
 */
export function capDart(piece: Piece, dartId: string, fold: Fold): Outcome<Piece> {
  const found = mouthOf(piece, dartId);
  if ('refused' in found) return found;
  const mouth = found.ok;
  const sewn = sewnDart(piece, dartId);
  if (sewn === undefined) return refuse('legs-bent', { dart: dartId });
  if (!(sewn.angle > 0)) return refuse('dart-not-open', { dart: dartId });
  const { point, ends, tip } = sewn;
  const differ = Math.abs(sewn.legs[0] - sewn.legs[1]);
  if (differ > ALIKE) return refuse('legs-differ', { dart: dartId, mm: differ });
  const onStart = foldsOnStart(piece, ends, fold);
  if (onStart === undefined) return refuse('fold-not-clear', { dart: dartId, fold });

  const near = onStart ? ends[0] : ends[1];
  const half = halfCap(piece, mouth, point, ends, onStart);
  if (half === undefined) return refuse('cap-misses-fold', { dart: dartId });
  const top = chainEnd(half);
  const other = endAt(
    reverseChain(transformChain(half, reflectionAcross(point, top))),
    onStart ? ends[1] : ends[0],
  );
  const whole: readonly [Chain, Chain] = onStart
    ? [half, startAt(other, top)]
    : [startAt(endAt(reverseChain(other), top), ends[0]), startAt(endAt(reverseChain(half), near), top)];

  const beside = besideMouth(mouth)[onStart ? 0 : 1];
  const seam = withMouth(mouth, [capEdge(beside, dartId, 1, whole[0]), capEdge(beside, dartId, 2, whole[1])]);
  const known = finishedDart(piece, dartId);
  const plain = withoutFinish(piece, [dartId]);
  const [into, outOf] = legIds(mouth.dart);
  const folds = [
    { id: into, line: foldLine(`sewn-${into}`, dartId, ends[0], point) },
    { id: outOf, line: foldLine(`sewn-${outOf}`, dartId, point, ends[1]) },
    { id: outOf, line: foldLine(`fold-${dartId}`, dartId, point, top) },
  ];
  const parts = plain.parts.map((p) => {
    const own = folds.filter((f) => partOf(plain, f.id) === p).map((f) => f.line);
    return own.length === 0 ? p : withPart(p, { lines: [...p.lines, ...own] });
  });
  return done(
    withFinished(withPiece(plain, { parts, seam }), {
      dart: dartId,
      tip,
      sewnPoint: point,
      by: known?.by ?? distance(tip, point),
      trued: known?.trued,
      fold,
    }),
  );
}

/** From the end of the leg that the dart is folded onto to where the fold cuts the seam reflected there. */
function halfCap(
  piece: Piece,
  mouth: Parameters<typeof runBeside>[1],
  point: Point,
  ends: readonly [Point, Point],
  onStart: boolean,
): Chain | undefined {
  const near = onStart ? ends[0] : ends[1];
  const leg = distance(point, near);
  const middle = add(unit(sub(ends[0], point)), unit(sub(ends[1], point)));
  const far = add(point, scale(unit(middle), REACH * leg));
  const run = runBeside(piece, mouth, onStart ? 'back' : 'on', REACH * leg);
  if (run.length === 0) return undefined;
  const reflected = startAt(transformChain(run, reflectionAcross(point, near)), near);
  const met = intersectChains(reflected, [line(point, far)]).find((x) => x.a.length > AT_END);
  if (met === undefined) return undefined;
  return endAt(subchain(reflected, 0, met.a.length), met.point);
}

function capEdge(beside: Edge, dart: string, n: 1 | 2, chain: Chain): Edge {
  const id = `${groupOf(beside)}/cap-${dart}.${n}`;
  const origin = { edge: id, from: 0, to: chainLength(chain) };
  return { id, role: 'cap', side: beside.side, chain, origin, partner: undefined, dart };
}

/** A line to fold along. */
export function foldLine(id: string, dart: string, from: Point, to: Point): InnerLine {
  const origin = { edge: id, from: 0, to: distance(from, to) };
  return {
    id,
    kind: 'fold',
    chain: [line(from, to)],
    origin,
    dart,
    notches: [],
    line: undefined,
    foot: undefined,
    faults: undefined,
  };
}
