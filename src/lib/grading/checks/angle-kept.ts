import { angleSum } from '../../pattern/angles.ts';
import { landmark } from '../../pattern/outline.ts';
import { TAU } from '../../geometry/trig.ts';
import { copiesOf, ownFront } from '../table.ts';
import { at, missing, names, near, tolerance } from '../finding.ts';
import type { Check } from '../types.ts';

/**
 * The paper round each of the bust points `names.bust` makes the same angle as on the block with its darts drawn to the bust point: no
 * cut and no turn changes it (trade notes: the angle is what counts). Tolerance `sum` in radians.
 */
export const angleKept: Check = ({ after }, spec) => {
  const paper = after.opened;
  return names(spec, 'bust').map((bust) => {
    const about = { landmark: bust };
    const point = paper && landmark(paper, bust);
    if (!paper || !point || copiesOf(ownFront(after), bust).length === 0)
      return missing('angle-kept/sum', { about });
    const darts = ownFront(after)
      .flatMap((p) => p.darts)
      .filter((d) => d.bustPoint === bust);
    if (darts.length === 0 || darts.some((d) => d.state === 'sewn'))
      return missing('angle-kept/sum', { about });
    const expected = TAU - after.block.facts.dartAngle;
    const sum = angleSum(ownFront(after), bust);
    return near('angle-kept/sum', 'rad', sum, expected, tolerance(spec, 'sum'), { where: at(point), about });
  });
};
