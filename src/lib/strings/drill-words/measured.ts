import type { Goal, Variant } from '../../lessons/drills/types.ts';
import { formatLength, unitsAt, type RulerUnits } from '../units.ts';

export const COUNTS = ['no', 'one', 'two', 'three', 'four', 'five'] as const;

export const capital = (text: string): string => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;

export const EDGES: Readonly<Record<Goal['place'], string>> = {
  side: 'side seam',
  'low-side': 'side seam below the dart',
  shoulder: 'shoulder seam',
  neckline: 'neckline',
  armhole: 'armhole',
  'centre-front': 'centre front',
  waist: 'waist',
};

/** Where a length begins, by the landmark there; the same landmark is the end of two edges. */
const FROM: Readonly<Record<string, string>> = {
  'side right/underarm': 'below the underarm',
  'low-side right/dart-lower-end': 'below the dart',
  'low-side right/side-waist': 'above the waist',
  'shoulder right/neck-point': 'from the neck point',
  'shoulder right/shoulder-point': 'from the shoulder point',
  'neckline right/neck-point': 'from the neck point',
  'neckline neck-centre': 'from centre front, along the curve',
  'armhole right/shoulder-point': 'from the shoulder point, along the curve',
  'armhole right/underarm': 'from the underarm, along the curve',
  'centre-front neck-centre': 'below the neckline',
  'centre-front waist-centre': 'above the waist',
  'waist waist-centre': 'from centre front',
  'waist right/side-waist': 'from the side seam',
  'waist right/waist-dart-side-end': 'from the waist dart, towards the side',
};
/** From which landmark a place is measured, in words. */
export const from = ({ place, from: landmark }: Goal): string => FROM[`${place} ${landmark}`]!;

const dartName = (id: string): string => (id === 'right/waist-dart' ? 'waist dart' : 'side dart');
export const dartsOf = (v: Variant): string => v.darts.map(dartName).join(' and the ');

/** The edge where the first opening begins. */
export const edgeOf = (v: Variant): string => EDGES[v.goals[0]!.place];

/** A length as it is to be measured on the paper that the drill speaks of. */
export const onPaper = (v: Variant, mm: number, units: RulerUnits): string =>
  formatLength(mm, unitsAt(v.scale, units));

/** Which paper that is. */
export const paperOf = (v: Variant): string =>
  v.scale === 'half' ? 'measured at half scale' : 'measured at full size';

/** The length to measure on the paper in front of the learner, and which paper that is. */
export const measured = (v: Variant, mm: number, units: RulerUnits): string =>
  `${onPaper(v, mm, units)} (${paperOf(v)})`;

export const goalLine = (v: Variant, goal: Goal, units: RulerUnits): string =>
  `On the ${EDGES[goal.place]}: ${measured(v, goal.mm, units)} ${from(goal)}.`;

/** Which size lengths are that are typed or read on the table: that of the exercise. */
export const scaleNote = (v: Variant): string =>
  v.scale === 'half'
    ? 'The lengths are those of the half-scale paper, on the screen as well.'
    : 'The lengths are full size, on the screen as well; the paper itself is half scale.';
