import { pick, type Chance } from '../chance.ts';
import { goalWithin, type Stretch } from '../goal.ts';
import type { DrillStepId } from '../steps.ts';
import type { Drill, Scale, Variant, Widths } from '../types.ts';
import { lengthBetween, without, type Draw } from './kind.ts';

const START: Stretch = {
  place: 'shoulder',
  edge: 'right/shoulder',
  from: 'right/neck-point',
  least: 0.35,
  most: 0.6,
};
/** On the right half, where the block has its paper; the line ends on the left one. */
const END: Stretch = {
  place: 'low-side',
  edge: 'right/side-lower',
  from: 'right/dart-lower-end',
  least: 0.35,
  most: 0.65,
};
/** As near as the course allows, and so near that a knit takes up all that is left over, mm. */
const PASS = [12, 20] as const;

/**
 * Plain seams in mm. Trade notes (read): 3/8 in for knits and overlocked seams, 5/8 in for wovens at home, 1/2 in on industrial straight
 * seams; 10, 12, 15 mm metric.
 */
const SEAM = { knit: [8, 12], woven: [12, 16] } as const;
/** Neckline and armholes: 1/4 in on enclosed curves (read, trade notes), up to 3/8 in as in the course; or bound. mm. */
const CURVE = [6, 9] as const;
/** No hem is narrower than the widest seam, so that centre back may have one; mm. */
const HEM = [18, 40] as const;

/** What is done when it begins: all that the main lesson has before the pieces are two. */
const BEFORE: readonly DrillStepId[] = [
  ...(['open-out', 'style-line', 'notches', 'working-darts', 'connectors'] as const),
  ...(['first-dart', 'second-dart', 'separate'] as const),
];

function widthsOf(chance: Chance, { fabric }: Drill, scale: Scale): Widths {
  const [least, most] = SEAM[fabric];
  const seam = lengthBetween(chance, scale, least, most);
  const bound = pick(chance, [true, false, false, false]);
  const curve = lengthBetween(chance, scale, ...CURVE);
  return { seam, curve: bound ? 0 : curve, hem: lengthBetween(chance, scale, ...HEM) };
}

/** The opened-out front of the main lesson, its darts moved into a slanted seam and its pieces cut apart: they are made ready to be sewn. */
export function readyOf({ drill, chance, begun }: Draw): Variant {
  const { scale, paper } = begun;
  const start = goalWithin(paper, START, scale, chance, 0);
  const end = goalWithin(paper, END, scale, chance, 0);
  const across = { end, pass: lengthBetween(chance, scale, ...PASS) };
  return {
    ...without(begun),
    darts: ['right', 'left'],
    goals: [start],
    shares: [1],
    before: BEFORE,
    across,
    widths: widthsOf(chance, drill, scale),
  };
}
