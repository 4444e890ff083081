import { pick } from '../chance.ts';
import { goalWithin, type Stretch } from '../goal.ts';
import type { PlaceName, Variant } from '../types.ts';
import { DARTS, without, type Draw } from './kind.ts';
import { moveOf } from './move.ts';

/** Measured from either end of the edge: the part of it in which the dart may begin, from the first one. */
const between = (
  place: PlaceName,
  edge: string,
  ends: readonly [string, string],
  [least, most]: readonly [number, number],
): readonly Stretch[] => [
  { place, edge, from: ends[0], least, most },
  { place, edge, from: ends[1], least: 1 - most, most: 1 - least },
];

/** What the second draw picks from. Its lists and their order never change: links of the third version hang on them. */
const PLACES: readonly (readonly Stretch[])[] = [
  between('shoulder', 'right/shoulder', ['right/neck-point', 'right/shoulder-point'], [0.15, 0.85]),
  between('neckline', 'right/neckline', ['right/neck-point', 'neck-centre'], [0.15, 0.85]),
  between('armhole', 'right/armhole', ['right/shoulder-point', 'right/underarm'], [0.2, 0.8]),
  between('centre-front', 'centre-front', ['neck-centre', 'waist-centre'], [0.15, 0.88]),
  between('low-side', 'right/side-lower', ['right/side-waist', 'right/dart-lower-end'], [0.1, 0.7]),
  between('waist', 'right/waist-outer', ['right/side-waist', 'right/waist-dart-side-end'], [0.15, 0.7]),
];

/** Both darts of the block into one opening, also lower at the side and beside the waist dart, by the second draw. */
export function joinOf(draw: Draw): Variant {
  const { drill, chance, begun } = draw;
  if (!drill.draw) return moveOf(draw);
  const stretch = pick(chance, pick(chance, PLACES));
  const goal = goalWithin(begun.paper, stretch, begun.scale, chance, 0);
  return { ...without(begun), darts: DARTS[begun.form], goals: [goal], shares: [1] };
}
