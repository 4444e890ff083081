import type { Block, BlockForm, Measures } from './block.ts';
import { cos, radians } from '../geometry/trig.ts';
import { construction } from './construction.ts';
import { draftBack } from './draft-back.ts';
import { draftFront } from './draft-front.ts';
import { FIGURES, unfitMeasure } from './figures.ts';
import { WAIST_BACK_OFF, inForm } from './forms.ts';
import { BACK_OFF } from './side-dart.ts';
import { withEdge, withPart, withPiece } from './with.ts';

/** The back shoulder is left longer than the front by this, mm (textbooks without a back shoulder dart: 3 to 10; memory). */
const BACK_SHOULDER_EASE = 5;
const COS_22 = cos(radians(22));

/**
 * The half block for a body: front (wearer's right, centre front at x = 0, bust line at y = 0) with its bust dart moved from the
 * armhole to the side seam, or from there on into another form, and back beside it. Throws RangeError for measures that
 * `unfitMeasure` names.
 */
export function draftBlock(measures: Measures, form: BlockForm = 'side'): Block {
  if (!FIGURE_MEASURES.has(measures)) return draft(measures, form);
  const known = figureBlocks[form];
  let block = known.get(measures);
  if (block === undefined) known.set(measures, (block = draft(measures, form)));
  return block;
}

/** The blocks of the demo figures: drafted once, on first use. Never anybody's own measures. */
const FIGURE_MEASURES: ReadonlySet<Measures> = new Set(Object.values(FIGURES));
const figureBlocks: Readonly<Record<BlockForm, Map<Measures, Block>>> = {
  side: new Map(),
  'two-dart': new Map(),
  waist: new Map(),
};

function draft(measures: Measures, form: BlockForm): Block {
  if (form !== 'side') return otherForm(draftBlock(measures), form);
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

/** A block with its side dart in another form. */
function otherForm(block: Block, form: Exclude<BlockForm, 'side'>): Block {
  const front = inForm(block.front, form);
  if (form === 'two-dart') return { ...block, front };
  // The side seam is one edge again, and the back's partner goes by its name.
  const parts = block.back.parts.map((p) =>
    withPart(p, {
      edges: p.edges.map((e) => (e.id === 'back/side' ? withEdge(e, { partner: 'right/side' }) : e)),
    }),
  );
  const back = withPiece(block.back, { parts });
  return { ...block, front, back, facts: { ...block.facts, backOff: WAIST_BACK_OFF } };
}
