import { chainLength } from '../geometry/chain.ts';
import { distance } from '../geometry/point.ts';
import type { Chain } from '../geometry/types.ts';
import type { Edge } from './types.ts';

/*
 * Chains never change, and one chain is measured by every operation on its piece: the lengths of those measured last are kept, in a
 * ring. (A weak map costs the collector more than the lengths cost.) The number is the same with and without.
 */
const KEPT = 16;
const chains = new Array<Chain | undefined>(KEPT).fill(undefined);
const lengths = new Float64Array(KEPT);
let next = 0;

/** Arc length of an edge's chain in mm, measured once where it is curved. */
export function edgeLength({ chain }: Edge): number {
  const first = chain[0]!;
  if (first.kind === 'line' && chain.length === 1) return distance(first.a, first.d);
  for (let i = 0; i < KEPT; i++) if (chains[i] === chain) return lengths[i]!;
  const length = chainLength(chain);
  chains[next] = chain;
  lengths[next] = length;
  next = (next + 1) % KEPT;
  return length;
}
