import { distance } from '../../geometry/point.ts';
import type { Point } from '../../geometry/types.ts';
import type { Dart } from '../../pattern/types.ts';
import type { TurnFact, Work } from '../../recipe/types.ts';
import { copiesOf, ownFront } from '../table.ts';
import type { Cause } from '../types.ts';

/** A share of the angle before a turn beyond which what is left after it is no slip of the hand: the dart has grown. */
const GROWN = 1.2;

/**
 * Why a dart did not close: turned about a point off its tip (`pivot-slipped`, by how many mm), turned the wrong way so that the
 * dart grew (`wrong-way`), the rest turned as if it were the freed part (`wrong-part`), not far enough (`not-closed`) or too far (`closed-too-far`), by how
 * many radians; `parts-apart` when the tips lie apart for no such reason. undefined when nothing of that shows.
 */
export function turnCause(
  before: Work,
  after: Work,
  dart: Dart,
  turns: readonly TurnFact[],
  seen: { readonly drift: number; readonly pivot: number; readonly freed: string | undefined },
): Cause | undefined {
  const last = turns.at(-1);
  if (seen.drift > seen.pivot) {
    const slip = Math.max(...turns.map((turn) => offPivot(before, after, dart, turn.pivot)));
    return slip > 1e-6 ? { code: 'pivot-slipped', amount: slip, unit: 'mm' } : { code: 'parts-apart' };
  }
  const left = dart.residual;
  // By the last turn: of several into several openings the others may have been right. What was closed already and came open again is not it.
  if (last !== undefined && last.before > 0 && left > GROWN * last.before) {
    // The right angle for the freed part makes the dart grow when the rest is turned by it.
    const other = last.part !== seen.freed;
    return { code: other ? 'wrong-part' : 'wrong-way', amount: left, unit: 'rad' };
  }
  if (left !== 0) {
    return { code: left > 0 ? 'not-closed' : 'closed-too-far', amount: Math.abs(left), unit: 'rad' };
  }
  return undefined;
}

/** How far a pivot lay from the dart's bust point, on whichever part and at whichever time it lay nearest, mm. */
function offPivot(before: Work, after: Work, dart: Dart, pivot: Point): number {
  const places = [before, after].flatMap((work) => copiesOf(ownFront(work), dart.bustPoint));
  return places.length === 0 ? 0 : Math.min(...places.map(({ at }) => distance(at, pivot)));
}
