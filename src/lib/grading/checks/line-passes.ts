import { reverseChain } from '../../geometry/chain-moved.ts';
import { cross, sub } from '../../geometry/point.ts';
import { tangentAt } from '../../geometry/segment.ts';
import type { Chain, Point } from '../../geometry/types.ts';
import { landmark } from '../../pattern/outline.ts';
import { largestDrop } from '../curvature.ts';
import { footOnLine } from '../feet.ts';
import { between, dimension, fact, names, near, number, tolerance } from '../finding.ts';
import { pieceOf, sideOf, styleLine } from '../table.ts';
import type { Check, CheckSpec, Finding } from '../types.ts';

/** `chain` runs from the other bust point's end towards the end into which this dart will be moved. */
function passing(
  chain: Chain,
  bust: Point,
  hand: 1 | -1,
  about: { side: string },
  spec: CheckSpec,
  findings: Finding[],
): void {
  const near_ = footOnLine(chain, bust);
  const tangent = tangentAt(chain[near_.segment]!, near_.t);
  const side = cross(tangent, sub(bust, near_.point)) * hand;
  const where = dimension(bust, near_.point);
  const range = [number(spec, 'least'), number(spec, 'most')] as const;
  const drop = largestDrop(chain, near_, bust);
  findings.push(
    fact('line-passes/side', side > 0, { where, about }),
    between('line-passes/distance', 'mm', near_.distance, range, tolerance(spec, 'distance'), {
      where,
      about,
    }),
    near('line-passes/growth', 'mm', drop.drop, 0, tolerance(spec, 'growth'), {
      where: dimension(drop.from, drop.to),
      cause: { code: 'hooked' },
      about,
    }),
  );
}

/**
 * Step 3: the line passes B1 with B1 on the hand of the lower piece and B2 on that of the upper one, each `least` to `most` mm off,
 * and from each the distance grows all the way to the end its dart is moved to. `names.toStart`, `names.toEnd`: landmarks of
 * B1 and B2; without `toEnd` there is B1 alone.
 */
export const linePasses: Check = ({ after }, spec) => {
  const drawn = styleLine(after, names(spec, 'line')[0]!, names(spec, 'start'));
  const front = pieceOf(after, 'front');
  if (!drawn || !front) return [];
  const first = names(spec, 'toStart')[0]!;
  const second = spec.names?.['toEnd'] === undefined ? undefined : names(spec, 'toEnd')[0]!;
  const b1 = landmark(front, first);
  const b2 = second === undefined ? undefined : landmark(front, second);
  if (!b1 || (second !== undefined && !b2)) return [];
  // Walking from the shoulder down, B1 lies on the right hand and B2 on the left; towards the start the hands change.
  const findings: Finding[] = [];
  passing(reverseChain(drawn.chain), b1, -1, { side: sideOf(first) }, spec, findings);
  if (second !== undefined && b2) passing(drawn.chain, b2, -1, { side: sideOf(second) }, spec, findings);
  return findings;
};
