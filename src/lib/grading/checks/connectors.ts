import { distance } from '../../geometry/point.ts';
import { sin } from '../../geometry/trig.ts';
import { footOnLine } from '../feet.ts';
import { dimension, missing, names, near, tolerance } from '../finding.ts';
import { lineOf } from '../table.ts';
import type { Check } from '../types.ts';

/**
 * Step 6: each connector's foot is the point of the line nearest to the dart's tip, which makes the opening as small as it can be:
 * e = 2 d sin(θ/2) (trade notes, derived). `names.line`, `names.darts`; tolerance `length` in mm, on the connector's length.
 */
export const connectors: Check = ({ after }, spec) => {
  const line = lineOf(after, names(spec, 'line')[0]);
  return names(spec, 'darts').map((dart) => {
    const foot = line?.feet[dart];
    if (!line || !foot) return missing('connectors/foot', { about: { dart } });
    const nearest = footOnLine(line.chain, foot.tip);
    const length = distance(foot.tip, foot.foot);
    return near('connectors/foot', 'mm', length, nearest.distance, tolerance(spec, 'length'), {
      where: dimension(foot.foot, nearest.point),
      cause: () => {
        const wider = 2 * (length - nearest.distance) * sin(after.block.facts.dartAngle / 2);
        return { code: 'opening-wider', amount: wider, unit: 'mm' };
      },
      about: { dart },
    });
  });
};
