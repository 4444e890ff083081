import { chainEnd, chainLength, chainStart } from '../../geometry/chain.ts';
import { distance } from '../../geometry/point.ts';
import { findEdge, landmark } from '../../pattern/outline.ts';
import type { Piece } from '../../pattern/types.ts';
import type { Chance } from './chance.ts';
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

/** Lengths are given in whole steps of this on the paper they are measured on, mm. */
const STEP = 5;

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
