import { chainLength } from '../geometry/chain.ts';
import { distance } from '../geometry/point.ts';
import type { Chain } from '../geometry/types.ts';
import type { Edge } from './types.ts';

/*
 * Chains never change, and one chain is measured by every operation on its piece: its length is kept with it. Weak, so that it
 * goes when the chain goes; the number is the same with and without.
 */
const known = new WeakMap<Chain, number>();

/** Arc length of an edge's chain in mm, measured once where it is curved. */
export function edgeLength(edge: Edge): number {
  const first = edge.chain[0]!;
  if (first.kind === 'line' && edge.chain.length === 1) return distance(first.a, first.d);
  const had = known.get(edge.chain);
  if (had !== undefined) return had;
  const length = chainLength(edge.chain);
  known.set(edge.chain, length);
  return length;
}
