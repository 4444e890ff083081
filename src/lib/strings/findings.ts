import type { Entries } from './finding-entry.ts';
import { READ_FINDINGS } from './findings-read.ts';
import { SEWING_FINDINGS } from './findings-sewing.ts';

/** By finding code: those about the line, its darts and its pieces stand here. */
export const FINDINGS: Entries = {
  ...READ_FINDINGS,
  'opened-out/mirror': {
    right: 'How far the left half lies from the mirror image of the right one, at the {landmark}',
    missing: 'The front is not opened out yet.',
  },

  'line-ends/drawn': {
    missing: 'There is no style line yet.',
    wrong: 'The style line could not be drawn.',
  },
  'line-ends/start': {
    right: 'The line begins on the {edge}.',
    wrong: 'The line should begin on the {wanted}',
    missing: 'The line has no beginning on an edge yet.',
  },
  'line-ends/end': {
    right: 'The line ends on the {edge}.',
    wrong: 'The line should end on the {wanted}',
    missing: 'The line has no end on an edge yet.',
  },
  'line-ends/start-place': 'Where the line begins on the {edge}, from the {landmark}',
  'line-ends/end-place': 'Where the line ends on the {edge}, from the {landmark}',
  'line-shape/inside': {
    right: 'The line stays on the paper.',
    wrong: 'The line leaves the paper.',
  },
  'line-shape/crosses-itself': {
    right: 'The line does not cross itself.',
    wrong: 'The line crosses itself, so it cannot be cut.',
  },
  'line-shape/meets-dart': {
    right: 'The line keeps clear of the darts.',
    wrong: 'The line runs into the {dart} dart.',
  },
  'line-shape/kink': 'Sharpest break in the line’s direction',
  'line-shape/kinks': 'How many times the stroke breaks its direction',
  'line-shape/radius': 'Tightest bend of the line, as a radius',
  'line-passes/side': {
    right: 'The line passes the {side} bust point on the right side of it.',
    wrong:
      'The line passes the {side} bust point on the other side of it: then the point belongs to the wrong piece.',
  },
  'line-passes/distance': 'Distance of the line from the {side} bust point',
  'line-passes/growth': 'How far the line comes back towards the {side} bust point on its way to the end',

  'notches-placed/line': 'There is no style line to mark notches on.',
  'notches-placed/before-foot': {
    right: 'Notch towards the shoulder from the place nearest to the {side} bust point',
    missing: 'No notch yet towards the shoulder from the {side} connector’s place.',
  },
  'notches-placed/after-foot': {
    right: 'Notch towards the side from the place nearest to the {side} bust point',
    missing: 'No notch yet towards the side from the {side} connector’s place.',
  },
  'notches-placed/after-cutting':
    'A notch was to be marked when the line was cut already; then the two edges never quite agree.',
  'notches-placed/symmetric': 'How much the row of notches differs from itself upside down',
  'notches-placed/count': 'Number of notches on the line',

  'darts-extended/tip': {
    right: 'Tip of the {dart} working dart from its bust point',
    missing: 'The {dart} dart is not drawn up to its bust point yet.{instead}',
  },
  'connectors/foot': {
    right: 'Length of the {dart} connector, against the shortest there is',
    missing: 'The {dart} connector is not drawn yet.',
  },

  'dart-closed/slashed': {
    wrong: 'The slash for the {dart} dart could not be made.',
    missing: 'The {dart} dart is not slashed yet.',
  },
  'dart-closed/hinge': {
    right: 'The slash ends at the tip of the {dart} dart; the hinge holds.',
    wrong: 'The slash went through the tip of the {dart} dart: nothing holds the two parts together.',
  },
  'dart-closed/turned': 'No part has been turned for the {dart} dart yet.',
  'dart-closed/pivot': 'How far the two parts of the {dart} dart came apart at the bust point',
  'dart-closed/residual': 'Gap between the ends of the {dart} dart’s legs (below 0 is an overlap)',
  'dart-closed/opening': 'Opening at the {edge}',
  'dart-closed/end': 'The line did not open towards the {edge}.',
  'dart-closed/grain':
    'Turned: the {part}. The piece comes out the same whichever part turns, but on a turned part the old grain is void.',

  'slash-drawn/drawn': {
    missing: 'There is no line from the {edge} to the bust point yet.',
    wrong: 'The line from the {edge} to the bust point could not be drawn.',
  },
  'slash-drawn/edge': {
    right: 'A {made} begins on the {edge}.',
    wrong: 'The {made} should begin on the {wanted}',
  },
  'slash-drawn/place': 'Where the {made} begins on the {edge}, from the {landmark}',
  'slash-drawn/tip': 'End of the {made} from the {landmark}{reached}',
  'slash-drawn/extra': 'There is one {made} more than is wanted, on the {edge}.',

  'dart-moved/cut': {
    missing: 'The way from the {edge} to the bust point is not opened yet.',
    wrong: 'The way from the {edge} to the bust point could not be opened.',
  },
  'dart-moved/turned': 'The {dart} dart has not been turned yet.{stays}',
  'dart-moved/hinge': {
    right: 'The paper still hangs together in the bust point.',
    wrong: 'The cut from the {edge} went through the bust point: nothing holds the parts together.',
  },
  'dart-moved/pivot': 'How far the two parts came apart at the bust point',
  'dart-moved/residual': 'Gap between the ends of the {dart} dart’s legs (below 0 is an overlap)',
  'dart-moved/opening': 'Opening at the {edge} (below 0 is an overlap)',
  'dart-moved/grain':
    'Turned: the {part}. The piece comes out the same whichever part turns, but on a turned part the old grain is void.',
  'angle-kept/sum': {
    right: 'Paper round the {landmark}, as an angle',
    missing: 'The darts are not drawn to the {landmark} yet, so nothing can be summed there.',
  },

  'dart-finished/point': {
    right: 'How far the point of the {dart} dart stands back',
    missing: 'The {dart} dart is not drawn to its sewn point yet.',
  },
  'dart-finished/legs': {
    right: 'How much longer one leg of the {dart} dart is than the other',
    missing: 'The legs of the {dart} dart are not equally long yet.',
  },
  'dart-finished/cap': {
    right: 'The {dart} dart has the cap for the way it is folded.',
    wrong: 'The cap of the {dart} dart is drawn for another fold; this dart is pressed {fold}.',
    missing: 'The {dart} dart has no cap yet.',
  },
  'dart-finished/graduated': 'How much further back the point of the {dart} dart stands than its neighbour’s',
  'slashes-laid/count': {
    right: 'Number of slash lines from the {edge}',
    missing: 'From the {edge} {count} slash lines are wanted; {found} are drawn.',
  },
  'slashes-laid/spacing': 'Distance of {slash} from its neighbour, along the edge',
  'slashes-laid/parallel': 'Angle between {slash} and its neighbour',
  'slashes-laid/pivot': {
    right: 'Distance of the alternate pivot of {slash} from the bust point',
    missing: 'The line of {slash} runs straight to the bust point; it should bend at an alternate pivot.',
  },
  'fullness/drawn': 'The opening at the {edge} is not made into fullness yet.',
  'fullness/kind': {
    right: 'The opening became {as}.',
    wrong: 'The opening became {as}; here {wanted} are wanted.',
  },
  'fullness/before': 'How far the new edge reaches before the opening, clockwise',
  'fullness/after': 'How far the new edge reaches after the opening, clockwise',
  'fullness/notches': {
    right: 'A notch stands at both ends of the fullness.',
    wrong: 'The fullness has no notch at one of its ends.',
  },
  'fullness/tucks': 'Number of tucks',
  'fullness/limit': 'How much longer the edge is than what it is sewn to',
  'princess/parted': {
    missing: 'The front is not parted into centre and side yet.',
    wrong: 'The front could not be parted along the two darts.',
  },
  'princess/seam': 'Side edge less centre edge of the princess seam, in interval {interval}',
  'princess/smooth': {
    right: 'How far the smoothing moved the seam of the {piece}',
    missing: 'The corner of the {piece} at the bust point is not smoothed yet.',
  },
  'princess/reach': 'How far the seam of the {piece} is smoothed on either side of the bust point',
  'seam-notches/parted': { missing: 'The two pieces are not there yet.' },
  'seam-notches/bust': {
    right: 'The notch at the bust point, from where the two parts of the seam meet',
    missing: 'No notch marks the bust point on the two edges yet.',
  },
  'seam-notches/beside': {
    right: 'The notch between the bust point and the {edge}, from the bust point',
    missing: 'No notch stands between the bust point and the {edge} yet.',
  },

  'separated/pieces': {
    right: 'The front is two pieces.',
    wrong: 'The front could not be separated.',
    missing: 'The upper and the lower piece still hang together.',
  },
  'separated/area': 'Area of all parts together',
  'overlaid/shown': 'The {piece} is not laid on the block yet.',
  'overlaid/fit': 'The {part} of the {piece}, laid on the block, at its farthest edge',
  'overlaid/coverage': 'The {part} of the {piece} no longer has the {edge} of the block.',

  'sliver/rest':
    'For the {fabric}: the {piece} laid on the block again, farthest edge that no treatment redrew',
  'sliver/area':
    'For the {fabric}: area that redrawing the {edge} changed on the {piece}, beside the prediction',

  'leftover/copy': 'There is no copy of the pieces for the {fabric} yet.',
  'leftover/bridged': 'For the {fabric}: the opening at the {dart} bust point is not bridged yet.',
  'leftover/treated':
    'For the {fabric}: the bridged opening at the {dart} bust point is neither eased in nor taken out yet.',
  'leftover/smooth': 'For the {fabric}: tightest bend of the bridge at the {dart} bust point, as a radius',
  'leftover/over-limit': 'For the {fabric}: excess eased in at the {dart} bust point',
  'leftover/trim-not-needed':
    'For the {fabric}: excess taken out at the {dart} bust point, though only more than this cloth can ease is to be taken out',
  'leftover/end': {
    right: 'For the {fabric}: the excess at the {dart} bust point went where its dart went.',
    wrong:
      'For the {fabric}: the excess at the {dart} bust point was taken out at the {edge}, where its dart did not go.',
  },
  'leftover/amount': 'For the {fabric}: what was taken out at the seam’s end for the {dart} bust point',
  'leftover/notches': {
    right: 'For the {fabric}: notches between the {dart} opening and the trimmed end, against their partners',
    missing:
      'For the {fabric}: the notches between the {dart} opening and the trimmed end are to be marked again.',
  },
  'leftover/back-trued': {
    right: 'For the {fabric}: front less back along the {seam}, the block’s own ease taken off',
    missing: 'For the {fabric}: the back’s edge along the {seam} is not trued yet.',
  },

  ...SEWING_FINDINGS,
};
