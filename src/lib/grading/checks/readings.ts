import { distance } from '../../geometry/point.ts';
import { angleBetween } from '../../geometry/trig.ts';
import { sub } from '../../geometry/point.ts';
import type { Point } from '../../geometry/types.ts';
import { landmark } from '../../pattern/outline.ts';
import { dimension, missing, names, near, tolerance } from '../finding.ts';
import { pieceOf } from '../table.ts';
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

/**
 * Step 1: the numbers read from the block: dart angle at the bust point (rad), leg length from the bust point and intake (mm).
 * `names.what`; tolerances `angle` (rad) and `length` (mm).
 */
export const readings: Check = ({ before, after }, spec) => {
  const front = pieceOf(before, 'front');
  const [bust, sewn, upper, lower] = ['bust-point', 'sewn-point', 'dart-upper-end', 'dart-lower-end'].map(
    (id) => front && landmark(front, `right/${id}`),
  );
  return names(spec, 'what').map((what) => {
    const about = { what };
    const read = after.readings[what];
    if (read === undefined || !bust || !sewn || !upper || !lower)
      return missing(`readings/${what}`, { about });
    const facts = factsOf(what, bust, sewn, upper, lower);
    const isAngle = what === 'dart-angle';
    const allowed = tolerance(spec, isAngle ? 'angle' : 'length');
    const extra = { about, where: facts.where, cause: () => causeOf(read, facts, !isAngle, allowed.value) };
    return near(`readings/${what}`, isAngle ? 'rad' : 'mm', read, facts.value, allowed, extra);
  });
};
