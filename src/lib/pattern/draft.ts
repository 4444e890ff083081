import type { Block, Measures } from './types.ts';
import { cos, radians } from '../geometry/trig.ts';
import { construction } from './construction.ts';
import { draftBack } from './draft-back.ts';
import { draftFront } from './draft-front.ts';
import { FIGURES, unfitMeasure } from './figures.ts';
import { BACK_OFF } from './side-dart.ts';

/** The back shoulder is left longer than the front by this, mm (textbooks without a back shoulder dart: 3 to 10; memory). */
const BACK_SHOULDER_EASE = 5;
const COS_22 = cos(radians(22));

/**
 * The half block for a body: front (wearer's right, centre front at x = 0, bust line at y = 0) with its bust dart moved from the
 * armhole to the side seam, and back beside it. Throws RangeError for measures that `unfitMeasure` names.
 */
export function draftBlock(measures: Measures): Block {
  if (!FIGURE_MEASURES.has(measures)) return draft(measures);
  let block = figureBlocks.get(measures);
  if (block === undefined) figureBlocks.set(measures, (block = draft(measures)));
  return block;
}

/** The blocks of the demo figures: drafted once, on first use. Never anybody's own measures. */
const FIGURE_MEASURES: ReadonlySet<Measures> = new Set(Object.values(FIGURES));
const figureBlocks = new Map<Measures, Block>();

function draft(measures: Measures): Block {
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
