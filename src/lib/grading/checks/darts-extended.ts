import { chainEnd } from '../../geometry/chain.ts';
import { distance } from '../../geometry/point.ts';
import { landmark, legsOf } from '../../pattern/outline.ts';
import type { Work } from '../../recipe/types.ts';
import { dimension, missing, names, near, tolerance } from '../finding.ts';
import { ownDart, ownFront } from '../table.ts';
import type { Check } from '../types.ts';

/** The landmark of a block dart's sewn point: of the side dart `right` it is `right/sewn-point`, of `right/waist-dart` `right/waist-sewn-point`. */
export const sewnPointOf = (dart: string): string =>
  dart.includes('/') ? dart.replace(/-dart$/, '-sewn-point') : `${dart}/sewn-point`;

/**
 * Both legs of each dart of `names.darts` run to the bust point; where one does not, another that was drawn up in its place is named.
 * Tolerance `tip` in mm.
 */
export const dartsExtended: Check = ({ before, after }, spec) => {
  const asked = names(spec, 'darts');
  const other = drawnUp(after).find((id) => !asked.includes(id) && !drawnUp(before).includes(id));
  return asked.map((id) => {
    const about = { dart: id };
    const found = ownDart(after, id);
    const bust = found && landmark(found.piece, found.dart.bustPoint);
    const legs = found && legsOf(found.piece, found.dart);
    if (!found || !bust || !legs || found.dart.state === 'sewn')
      return missing('darts-extended/tip', {
        about: other === undefined ? about : { ...about, instead: other },
      });
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
};

/** Ids of the darts that are drawn beyond their sewn points. */
const drawnUp = (work: Work): string[] =>
  ownFront(work).flatMap(({ darts }) => darts.filter(({ state }) => state !== 'sewn').map(({ id }) => id));
