import type { FindingState } from '../grading/types.ts';

/** A sentence, or the subject to which the numbers are added; one for all states, or one for each. */
type Entry = string | Readonly<Partial<Record<FindingState, string>>>;

const found = (what: string): Entry => ({
  right: `Distance of your mark from the ${what}`,
  missing: `The ${what} is not pointed out yet.`,
});
const read = (what: string): Entry => ({ right: `Your ${what}`, missing: `The ${what} is not read yet.` });

/** By finding code. Words in braces are filled in from the finding. */
export const FINDINGS: Readonly<Record<string, Entry>> = {
  'landmarks-found/bust-point': found('bust point'),
  'landmarks-found/dart-upper': found('upper dart leg'),
  'landmarks-found/dart-lower': found('lower dart leg'),
  'landmarks-found/centre-front': found('centre front'),
  'landmarks-found/neck-point': found('neck point'),
  'landmarks-found/sewn-point': found('sewn point of the side dart'),
  'landmarks-found/waist-sewn-point': found('sewn point of the waist dart'),
  'landmarks-found/waist-dart-centre': found('inner leg of the waist dart'),
  'landmarks-found/waist-dart-side': found('outer leg of the waist dart'),
  'landmarks-found/neckline': found('neckline'),
  'landmarks-found/shoulder': found('shoulder seam'),
  'landmarks-found/armhole': found('armhole'),
  'landmarks-found/side': found('side seam'),
  'landmarks-found/waist': found('waist'),
  'landmarks-found/shoulder-point': found('shoulder point'),
  'landmarks-found/underarm': found('underarm'),
  'landmarks-found/side-waist': found('waist corner at the side'),
  'landmarks-found/neck-centre': found('centre of the neckline'),
  'landmarks-found/waist-centre': found('centre of the waist'),
  'readings/dart-angle': read('angle of the dart at the bust point'),
  'readings/leg-length': read('length of a dart leg, from the bust point to the {edge}'),
  'readings/intake': read('intake at the {edge}'),
  'paper/dart-angle': {
    right: 'Angle of {open} on your paper',
    missing: 'The table has no such dart to compare the angle with.',
  },
  'paper/intake': {
    right: 'Intake of {open} on your paper',
    missing: 'The table has no such dart to compare the intake with.',
  },
  'paper/leg-length': {
    right: 'Leg of {open} on your paper, from the bust point',
    missing: 'The table has no such dart to compare the leg with.',
  },
  'paper/agrees': {
    note: 'Your three measures of {open} agree with each other, so the dart itself lies elsewhere or is another; the intake beside what your leg and angle make it, 2 × leg × sin(angle / 2)',
    wrong:
      'Your three measures of {open} do not agree with each other, so one of them was misread; the intake beside what your leg and angle make it, 2 × leg × sin(angle / 2)',
  },
  'paper/opening': {
    right: 'Opening left by {open} in the seam of the {piece}, on your paper',
    missing: 'The table has no such opening to compare with.',
  },
  'paper/seam-length': {
    right: 'Length of the {group} on your paper, {piece}',
    missing: 'The table has no such seam to compare with.',
  },
  'paper/allowance-width': {
    right: 'Width of the allowance on your paper, {group} of the {piece}',
    missing: 'The table has no such allowance to compare with.',
  },

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
    missing: 'The {dart} dart is not drawn up to its bust point yet.',
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
    'Turned: the {part}. The result is congruent whichever part turns, but on a turned part the old grain is void.',

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
    'Turned: the {part}. The result is congruent whichever part turns, but on a turned part the old grain is void.',
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

  'allowances/pieces': 'The seams have to be treated before the allowances.',
  'allowances/before-truing': 'The {piece} has allowances, but its seam is not treated yet.',
  'allowances/width': {
    right: 'Allowance of the {piece}, {group}',
    missing: 'No allowance yet on the {piece}, {group}.',
  },
  'allowances/partners': 'Difference between the allowances of partner edges, {kind}',
  'allowances/corner': {
    right: 'The corner from {before} to {after} on the {piece} will lie flush.',
    wrong: 'The corner from {before} to {after} on the {piece} will not lie flush.',
    missing: 'The corner from {before} to {after} on the {piece} has no form yet.',
  },
  'allowances/notches': {
    right: 'The notches of the {piece} reach the cut line.',
    missing: 'The notches of the {piece} are not carried out to the cut line yet.',
  },

  'labels/pieces': 'There are no separate pieces to label yet.',
  'labels/label': 'The {piece} has no label yet.',
  'labels/name': {
    right: 'The {piece} is called “{name}”.',
    wrong: 'The {piece} needs a name of its own; “{name}” does not tell it from the others.',
  },
  'labels/cut': 'Number to cut of the {piece}',
  'labels/right-side-up': {
    right: 'The {piece} says right side up.',
    wrong: 'The {piece} is not symmetric, so its label has to say right side up.',
  },
  'grain/drawn': 'The {piece} has no grainline yet.',
  'grain/void':
    'Every part of the {piece} was turned, so the old grain is void; the new grainline is yours to choose.',
  'grain/direction': 'Grainline of the {piece}, off the centre front of the part that kept its grain',

  'walked/done': 'The {seam} is not walked yet.',
  'walked/along': {
    right: 'The {seam} was walked on the seam line.',
    wrong: 'The {seam} was walked on the cut line; walk seam line on seam line.',
  },
  'walked/says': {
    right: 'You say of the {seam} that {says}, and so it is.',
    wrong: 'You say of the {seam} that {says}; the walk shows something else.',
  },
  'walked/difference': 'Largest difference along the {seam}, beyond what is eased (from {from} to {to})',
};
