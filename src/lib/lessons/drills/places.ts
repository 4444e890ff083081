import type { Piece } from '../../pattern/types.ts';
import type { BlockForm } from '../../pattern/block.ts';
import { pick, type Chance } from './chance.ts';
import { goalWithin, type Stretch } from './goal.ts';
import type { Goal, PlaceName, Scale } from './types.ts';

const EVERYWHERE: readonly Stretch[] = [
  { place: 'shoulder', edge: 'right/shoulder', from: 'right/neck-point', least: 0.2, most: 0.8 },
  { place: 'neckline', edge: 'right/neckline', from: 'right/neck-point', least: 0.2, most: 0.8 },
  { place: 'armhole', edge: 'right/armhole', from: 'right/shoulder-point', least: 0.25, most: 0.75 },
  { place: 'centre-front', edge: 'centre-front', from: 'neck-centre', least: 0.2, most: 0.85 },
];

/** Where a dart may go to in a form of the block: everywhere but where it is. */
const PLACES: Readonly<Record<BlockForm, readonly Stretch[]>> = {
  waist: [
    ...EVERYWHERE,
    { place: 'side', edge: 'right/side', from: 'right/underarm', least: 0.15, most: 0.85 },
  ],
  side: [
    ...EVERYWHERE,
    { place: 'waist', edge: 'right/waist', from: 'waist-centre', least: 0.25, most: 0.7 },
  ],
  'two-dart': EVERYWHERE,
};

/** Which places, and how much of the edge must be left on both sides of them, mm. */
export interface Wanted {
  readonly only?: readonly PlaceName[];
  readonly room?: number;
}

/** `count` different places on a front of that form, each a whole number of steps along its edge at the given scale. */
export function goalsOn(
  paper: Piece,
  form: BlockForm,
  scale: Scale,
  count: number,
  chance: Chance,
  { only, room = 0 }: Wanted = {},
): readonly Goal[] {
  const left = PLACES[form].filter(({ place }) => only === undefined || only.includes(place));
  const goals: Goal[] = [];
  for (let i = 0; i < count; i++) {
    const stretch = pick(chance, left);
    left.splice(left.indexOf(stretch), 1);
    goals.push(goalWithin(paper, stretch, scale, chance, room));
  }
  return goals;
}
