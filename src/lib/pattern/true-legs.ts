import type { Chain, Point } from '../geometry/types.ts';
import type { Edge, Piece } from './types.ts';
import { add, distance, scale, sub } from '../geometry/point.ts';
import { cubic } from '../geometry/segment.ts';
import { sewnDart, sewnLegs } from './back-off.ts';
import { besideMouth, finishedDart, mouthOf, withFinished, withMouth, withoutFinish } from './mouth.ts';
import { endAt, legsOf, startAt } from './outline.ts';
import { type Outcome, done, refuse } from './outcome.ts';
import { withEdge, withPiece } from './with.ts';

/** Legs that differ by less, mm, are alike. */
export const ALIKE = 1e-6;

/**
 * Trues the legs of a dart that will be sewn to each other: both are drawn as long as their mean, each along its own line, and the
 * edges beside it run to the new ends (their last curve moves its end and the control point there with it, so that they meet
 * the leg as they did). Refusals: those of `mouthOf`, `legs-bent` when the dart was not drawn to a sewn point, `dart-not-open`.
 */
export function trueLegs(piece: Piece, dartId: string): Outcome<Piece> {
  const found = mouthOf(piece, dartId);
  if ('refused' in found) return found;
  const sewn = sewnDart(piece, dartId);
  const legs = legsOf(piece, found.ok.dart);
  if (sewn === undefined || legs === undefined) return refuse('legs-bent', { dart: dartId });
  if (!(sewn.angle > 0)) return refuse('dart-not-open', { dart: dartId });
  const { point, ends } = sewn;
  const [a, b] = sewn.legs;
  const length = (a + b) / 2;
  const to = (end: Point, was: number): Point => add(point, scale(sub(end, point), length / was));
  const alike = Math.abs(a - b) <= ALIKE;
  const start = alike ? ends[0] : to(ends[0], a);
  const end = alike ? ends[1] : to(ends[1], b);
  const [before, after] = besideMouth(found.ok);
  const seam = withMouth(found.ok, sewnLegs(legs, start, point, end), (e): Edge => {
    if (alike) return e;
    let chain = e.chain;
    if (e === before) chain = endMoved(chain, start);
    if (e === after) chain = startMoved(chain, end);
    return chain === e.chain ? e : withEdge(e, { chain });
  });
  const known = finishedDart(piece, dartId);
  return done(
    withFinished(withPiece(withoutFinish(piece, [dartId]), { seam }), {
      dart: dartId,
      tip: sewn.tip,
      sewnPoint: point,
      by: known?.by ?? distance(sewn.tip, point),
      trued: Math.abs(a - b) + (known?.trued ?? 0),
      fold: undefined,
    }),
  );
}

const shifted = (control: Point, from: Point, to: Point): Point => add(control, sub(to, from));

function endMoved(chain: Chain, p: Point): Chain {
  const last = chain[chain.length - 1]!;
  if (last.kind === 'line') return endAt(chain, p);
  return [...chain.slice(0, -1), cubic(last.a, last.b, shifted(last.c, last.d, p), p)];
}

function startMoved(chain: Chain, p: Point): Chain {
  const first = chain[0]!;
  if (first.kind === 'line') return startAt(chain, p);
  return [cubic(p, shifted(first.b, first.a, p), first.c, first.d), ...chain.slice(1)];
}
