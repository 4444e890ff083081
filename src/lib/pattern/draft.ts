import type { Block, Measures } from './types.ts';
import { cos, radians } from '../geometry/trig.ts';
import { construction } from './construction.ts';
import { draftBack } from './draft-back.ts';
import { draftFront } from './draft-front.ts';
import { unfitMeasure } from './figures.ts';
import { BACK_OFF } from './side-dart.ts';

/** The back shoulder is left longer than the front by this, mm (textbooks without a back shoulder dart: 3 to 10; memory). */
const BACK_SHOULDER_EASE = 5;
const COS_22 = cos(radians(22));

/**
 * The half block for a body: front (wearer's right, centre front at x = 0, bust line at y = 0) with its bust dart moved from the
 * armhole to the side seam, and back beside it. Throws RangeError for measures that `unfitMeasure` names.
 */
export function draftBlock(measures: Measures): Block {
  const unfit = unfitMeasure(measures);
  if (unfit !== undefined) throw new RangeError(`the block cannot be drafted with this ${unfit}`);
  const c = construction(measures);
  const shoulderLength = (c.chestWidth - c.neckWidth) / COS_22 + 18;
  const front = draftFront(measures, c, shoulderLength);
  return {
    measures,
    front: front.piece,
    back: draftBack(measures, c, shoulderLength + BACK_SHOULDER_EASE),
    facts: {
      dartAngle: front.dartAngle,
      backOff: BACK_OFF,
      waistSuppression: c.suppression,
      backShoulderEase: BACK_SHOULDER_EASE,
    },
  };
}
