import { chainEnd } from '../../geometry/chain.ts';
import { distance } from '../../geometry/point.ts';
import { landmark, legsOf } from '../../pattern/outline.ts';
import { dimension, missing, names, near, tolerance } from '../finding.ts';
import { ownDart } from '../table.ts';
import type { Check } from '../types.ts';

/** The landmark of a block dart's sewn point: of the side dart `right` it is `right/sewn-point`, of `right/waist-dart` `right/waist-sewn-point`. */
export const sewnPointOf = (dart: string): string =>
  dart.includes('/') ? dart.replace(/-dart$/, '-sewn-point') : `${dart}/sewn-point`;

/** Step 5: both legs of each dart of `names.darts` run to the bust point. Tolerance `tip` in mm. */
export const dartsExtended: Check = ({ after }, spec) =>
  names(spec, 'darts').map((id) => {
    const about = { dart: id };
    const found = ownDart(after, id);
    const bust = found && landmark(found.piece, found.dart.bustPoint);
    const legs = found && legsOf(found.piece, found.dart);
    if (!found || !bust || !legs || found.dart.state === 'sewn')
      return missing('darts-extended/tip', { about });
    const tip = chainEnd(legs.into.chain);
    const sewn = landmark(found.piece, sewnPointOf(id));
    const allowed = tolerance(spec, 'tip');
    const stopped = sewn !== undefined && distance(tip, sewn) <= allowed.value;
    return near('darts-extended/tip', 'mm', distance(tip, bust), 0, allowed, {
      where: dimension(tip, bust),
      cause: stopped ? { code: 'drawn-to-sewn-point' } : undefined,
      about,
    });
  });
