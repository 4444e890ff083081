import type { Fold } from '../../../pattern/types.ts';
import { pick } from '../chance.ts';
import { goalsOn } from '../places.ts';
import type { PlaceName, Variant } from '../types.ts';
import { DARTS, lengthBetween, without, type Draw } from './kind.ts';

/** Darts that run up or down are pressed to centre front or to the side, those that lie across up or down. */
const FOLDS: Readonly<Record<PlaceName, readonly Fold[]>> = {
  shoulder: ['centre', 'side'],
  neckline: ['centre', 'side'],
  waist: ['centre', 'side'],
  armhole: ['up', 'down'],
  'centre-front': ['up', 'down'],
  side: ['up', 'down'],
  'low-side': ['up', 'down'],
};

/** Sewn points: 1/2 to 3/4 in from the bust point at the waist, about an inch elsewhere (memory: Joseph-Armstrong). mm. */
const OFF = { waist: [12, 20], elsewhere: [18, 32] } as const;

/** Where a dart of the block lies. */
const lies = (dart: string): PlaceName => (dart === 'right' ? 'side' : 'waist');

/** A dart is backed off and gets its cap: where the block has it, or after it was moved. */
export function finishOf({ chance, begun }: Draw): Variant {
  const { form, scale, paper } = begun;
  const dart = pick(chance, DARTS[form]);
  const moves = pick(chance, [true, true, false]);
  const goals = moves ? goalsOn(paper, form, scale, 1, chance) : [];
  const place = goals[0]?.place ?? lies(dart);
  const [least, most] = OFF[place === 'waist' ? 'waist' : 'elsewhere'];
  const off = lengthBetween(chance, scale, least, most);
  return {
    ...without(begun),
    darts: [dart],
    goals,
    shares: goals.map(() => 1),
    sewn: { off, fold: pick(chance, FOLDS[place]) },
  };
}
