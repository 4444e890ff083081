import { pick } from '../chance.ts';
import type { Variant } from '../types.ts';
import { DARTS, without, type Draw } from './kind.ts';

/** Of each dart: the point that it is sewn to, which is not the bust point, and its two legs, which are told from each other. */
const OF_DART: Readonly<Record<string, readonly [sewn: string, ...legs: string[]]>> = {
  right: ['sewn-point', 'dart-upper', 'dart-lower'],
  'right/waist-dart': ['waist-sewn-point', 'waist-dart-centre', 'waist-dart-side'],
};
const EDGES = ['centre-front', 'neckline', 'shoulder', 'armhole', 'side', 'waist'] as const;
const POINTS = [
  ...(['neck-point', 'shoulder-point', 'underarm', 'side-waist', 'neck-centre', 'waist-centre'] as const),
];

/** Five things are pointed out, one dart is read, and the front is opened out. Among them may be the five with which the course begins. */
export function findingOf({ chance, begun }: Draw): Variant {
  const dart = pick(chance, DARTS[begun.form]);
  const [sewn, ...legs] = OF_DART[dart]!;
  const tip = pick(chance, ['bust-point', sewn]);
  const toFind = [tip, ...legs, pick(chance, EDGES), pick(chance, POINTS)];
  return { ...without(begun), darts: [dart], goals: [], shares: [], toFind };
}
