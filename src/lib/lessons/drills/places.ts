import { chainEnd, chainLength, chainStart } from '../../geometry/chain.ts';
import { distance } from '../../geometry/point.ts';
import { findEdge, landmark } from '../../pattern/outline.ts';
import type { BlockForm, Piece } from '../../pattern/types.ts';
import { pick, type Chance } from './chance.ts';
import type { Goal, PlaceName, Scale } from './types.ts';

/** A part of an edge. */
export interface Stretch {
  readonly place: PlaceName;
  readonly edge: string;
  readonly from: string;
  /** The part of the edge in which a dart may begin, from that landmark. */
  readonly least: number;
  readonly most: number;
}

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

/** Lengths are given in whole steps of this on the paper they are measured on, mm. */
const STEP = 5;

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

/** A place on that part of the edge, at least `room` mm from its ends, a whole number of steps along it at the given scale. */
export function goalWithin(
  paper: Piece,
  { place, edge, from, least, most }: Stretch,
  scale: Scale,
  chance: Chance,
  room: number,
): Goal {
  const chain = findEdge(paper, edge)!.chain;
  const length = chainLength(chain);
  const start = landmark(paper, from)!;
  const forward = distance(start, chainStart(chain)) <= distance(start, chainEnd(chain));
  const step = scale === 'half' ? 2 * STEP : STEP;
  const wanted = (least + chance() * (most - least)) * length;
  const kept = Math.min(Math.max(wanted, room), length - room);
  const mm = Math.min(length, Math.max(step, Math.round(kept / step) * step));
  const fraction = mm / length;
  return { place, edge, from, mm, fraction, at: forward ? fraction : 1 - fraction };
}
