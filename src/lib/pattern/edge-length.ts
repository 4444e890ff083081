import { chainLength } from '../geometry/chain.ts';
import type { Chain } from '../geometry/types.ts';
import type { Edge } from './types.ts';

/*
 * Chains never change, and one chain is measured by every operation on its piece: its length is kept with it. Weak, so that it
 * goes when the chain goes; the number is the same with and without.
 */
const known = new WeakMap<Chain, number>();

/** Arc length of an edge's chain in mm, measured once. */
export function edgeLength(edge: Edge): number {
  const had = known.get(edge.chain);
  if (had !== undefined) return had;
  const length = chainLength(edge.chain);
  known.set(edge.chain, length);
  return length;
}
