import { chainEnd, chainStart } from '../../geometry/chain.ts';
import { distance, sub } from '../../geometry/point.ts';
import { angleBetween } from '../../geometry/trig.ts';
import type { Point } from '../../geometry/types.ts';
import { landmark, legsOf, outlineOf } from '../../pattern/outline.ts';
import type { Piece } from '../../pattern/types.ts';
import { behind, dimension, missing, names, near, tolerance } from '../finding.ts';
import { pieceOf } from '../table.ts';
import { sewnPointOf } from './darts-extended.ts';
import type { Cause, Check, Where } from '../types.ts';

interface Facts {
  readonly value: number;
  /** What it would be at the point of the sewn dart. */
  readonly sewn: () => number;
  readonly where: Where;
}

function factsOf(what: string, bust: Point, sewn: Point, upper: Point, lower: Point): Facts {
  if (what === 'dart-angle') {
    const angle = (tip: Point) => Math.abs(angleBetween(sub(upper, tip), sub(lower, tip)));
    return { value: angle(bust), sewn: () => angle(sewn), where: { kind: 'point', at: bust } };
  }
  if (what === 'leg-length') {
    return { value: distance(bust, lower), sewn: () => distance(sewn, lower), where: dimension(bust, lower) };
  }
  const intake = distance(upper, lower);
  return { value: intake, sewn: () => intake, where: dimension(upper, lower) };
}

function causeOf(read: number, facts: Facts, length: boolean, reach: number): Cause | undefined {
  const close = (to: number) => Math.abs(read - to) <= reach;
  if (close(facts.sewn())) return { code: 'measured-at-sewn-point' };
  if (length && (close(facts.value / 2) || close(facts.value * 2))) return { code: 'scale-mixed' };
  return undefined;
}

/** What is measured of a dart: its bust point, the point it is sewn to, its leg ends, and the role of the edge that they lie on. */
function measured(front: Piece | undefined, id: string) {
  const dart = front?.darts.find((one) => one.id === id);
  const legs = front && dart && legsOf(front, dart);
  const bust = front && dart && landmark(front, dart.bustPoint);
  const sewn = front && landmark(front, sewnPointOf(id));
  if (!front || !legs || !bust || !sewn) return undefined;
  const edges = outlineOf(front);
  const beside = edges.at(edges.findIndex((edge) => edge.id === legs.into.id) - 1);
  return {
    bust,
    sewn,
    upper: chainEnd(legs.outOf.chain),
    lower: chainStart(legs.into.chain),
    edge: beside?.role ?? 'side',
  };
}

const codeOf = behind('readings/');

/**
 * The numbers read from the block: a dart's angle at the bust point (rad), leg length from the bust point and intake (mm).
 * `names.what`; `names.dart` where it is not the side dart, `right`; tolerances `angle` (rad) and `length` (mm).
 */
export const readings: Check = ({ before, after }, spec) => {
  const dart = measured(pieceOf(before, 'front'), String(spec.names?.['dart'] ?? 'right'));
  return names(spec, 'what').map((what) => {
    const about = { what, edge: dart?.edge ?? 'side' };
    const read = after.readings[what];
    if (read === undefined || !dart) return missing(codeOf(what), { about });
    const facts = factsOf(what, dart.bust, dart.sewn, dart.upper, dart.lower);
    const isAngle = what === 'dart-angle';
    const allowed = tolerance(spec, isAngle ? 'angle' : 'length');
    const extra = { about, where: facts.where, cause: () => causeOf(read, facts, !isAngle, allowed.value) };
    return near(codeOf(what), isAngle ? 'rad' : 'mm', read, facts.value, allowed, extra);
  });
};
