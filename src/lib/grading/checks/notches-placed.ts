import { chainLength, pointAtLength } from '../../geometry/chain.ts';
import { nearestOnChain } from '../../geometry/nearest.ts';
import type { Chain } from '../../geometry/types.ts';
import { landmark } from '../../pattern/outline.ts';
import type { Notch, Piece } from '../../pattern/types.ts';
import { at, between, dimension, fact, missing, names, number, tolerance } from '../finding.ts';
import { pieceOf, styleLine } from '../table.ts';
import type { Check, CheckSpec, Finding } from '../types.ts';

/** Notches marked across a line that is not cut yet, mm from the line's start, in order. */
function notchesOn(front: Piece, line: string): readonly Notch[] {
  for (const part of front.parts) for (const inner of part.lines) if (inner.id === line) return inner.notches;
  return [];
}

/**
 * One notch on each side of a foot, at a distance in the range; of several the one nearest to the middle of the range. A foot
 * with no notch near it is not done yet; one with a notch on one side only has a fault.
 */
function besideFoot(
  chain: Chain,
  marks: readonly number[],
  foot: number,
  side: string,
  spec: CheckSpec,
): Finding[] {
  const range = [number(spec, 'least'), number(spec, 'most')] as const;
  const middle = (range[0] + range[1]) / 2;
  const nearest = ([-1, 1] as const).map((way) => {
    const aways = marks.map((mark) => (mark - foot) * way).filter((away) => away > 0 && away <= 3 * range[1]);
    return aways.sort((p, q) => Math.abs(p - middle) - Math.abs(q - middle))[0];
  });
  const untouched = nearest.every((away) => away === undefined);
  return nearest.map((away, i) => {
    const way = i === 0 ? -1 : 1;
    const code = `notches-placed/${i === 0 ? 'before-foot' : 'after-foot'}`;
    const about = { side };
    if (away === undefined) {
      const extra = { where: at(pointAtLength(chain, foot + way * middle)), about };
      return untouched
        ? missing(code, extra)
        : fact(code, false, { ...extra, cause: { code: 'one-side-only' } });
    }
    const where = dimension(pointAtLength(chain, foot), pointAtLength(chain, foot + way * away));
    return between(code, 'mm', away, range, tolerance(spec, 'place'), { where, about });
  });
}

/** How far, at most, the notches miss each other when the seam is laid upside down, mm. */
function asymmetry(marks: readonly number[], length: number): number {
  let most = 0;
  for (let i = 0; i < marks.length; i++) {
    most = Math.max(most, Math.abs(marks[i]! - (length - marks[marks.length - 1 - i]!)));
  }
  return most;
}

/**
 * Step 4: notches across the style line before it is cut. On each side of each place where a connector will meet the line, at
 * least one, `least` to `most` mm away; not symmetric along the seam; no more than `count` in all.
 */
export const notchesPlaced: Check = ({ after }, spec) => {
  const id = names(spec, 'line')[0]!;
  const drawn = styleLine(after, id, names(spec, 'start'));
  const front = pieceOf(after, 'front');
  if (!drawn || !front) return [missing('notches-placed/line')];
  const length = chainLength(drawn.chain);
  const marks = notchesOn(front, id)
    .map((notch) => (drawn.reversed ? length - notch.at : notch.at))
    .sort((a, b) => a - b);
  const findings: Finding[] = [];
  for (const name of names(spec, 'bustPoints')) {
    const bust = landmark(front, name);
    if (bust) {
      const foot = nearestOnChain(drawn.chain, bust).length;
      findings.push(...besideFoot(drawn.chain, marks, foot, name.split('/')[0]!, spec));
    }
  }
  if (marks.length > 0) {
    const apart = [number(spec, 'asymmetry'), 1e6] as const;
    findings.push(
      between('notches-placed/symmetric', 'mm', asymmetry(marks, length), apart, {
        value: 0,
        reason: 'seen-by-eye',
      }),
      between('notches-placed/count', 'count', marks.length, [1, number(spec, 'count')], {
        value: 0,
        reason: 'none-too-many',
      }),
    );
  }
  return findings;
};
