import { goalWithin, type Stretch } from '../goal.ts';
import type { Variant } from '../types.ts';
import { DARTS, lengthBetween, without, type Draw } from './kind.ts';

const START: Stretch = {
  place: 'shoulder',
  edge: 'right/shoulder',
  from: 'right/neck-point',
  least: 0.35,
  most: 0.65,
};
const END: Stretch = {
  place: 'waist',
  edge: 'right/waist',
  from: 'waist-centre',
  least: 0.35,
  most: 0.55,
};
/** The line passes the bust point within a band so wide, mm, that begins that far from it: all of it 10 to 25 mm away, as in the course. */
const BAND = 6;
const NEAREST = [10, 19] as const;

/** A style line beside the bust point, a connector to it, and the side dart moved into the seam. */
export function lineOf({ chance, begun }: Draw): Variant {
  const { form, scale, paper } = begun;
  const start = goalWithin(paper, START, scale, chance, 0);
  const end = goalWithin(paper, END, scale, chance, 0);
  const least = lengthBetween(chance, scale, ...NEAREST);
  return {
    ...without(begun),
    darts: DARTS[form],
    goals: [start],
    shares: [1],
    line: { end, least, most: least + BAND },
  };
}
