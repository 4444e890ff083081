import { chainLength } from '../../geometry/chain.ts';
import { reverseChain } from '../../geometry/chain-moved.ts';
import { subchain } from '../../geometry/subchain.ts';
import { add, distance, scale, sub, unit } from '../../geometry/point.ts';
import { line as straight } from '../../geometry/segment.ts';
import type { Chain } from '../../geometry/types.ts';
import { dartsOf, lineOf, type Scene } from '../scene.ts';
import type { ToolSpec } from '../tool-spec.ts';
import { BEYOND, scissors, type CutPath } from './scissors.ts';

/** A shorter way along the line is none, mm. */
const LEAST = 1e-6;

interface LinePath extends CutPath {
  readonly from?: 'start' | 'end';
}

/**
 * The ways a pair of scissors can go: along the line, then up the connector. With one connector from either end of the line, with
 * several from the end that no other one lies before.
 */
export function cutPaths(scene: Scene): readonly LinePath[] {
  const line = lineOf(scene.work);
  if (!line) return [];
  const whole = chainLength(line.chain);
  const apart = !scene.work.pieces.some((piece) => piece.id === 'front');
  const nearer = (at: number) => (at * 2 <= whole ? 'start' : 'end');
  const feet = Object.entries(line.feet).sort((a, b) => a[1].at - b[1].at);
  return dartsOf(scene).flatMap(({ piece, dart }): LinePath[] => {
    const rank = feet.findIndex(([id]) => id === dart.id);
    const foot = feet[rank]?.[1];
    if (!foot || distance(foot.foot, foot.tip) < 1e-6 || piece.hinges.some((hinge) => hinge.dart === dart.id))
      return [];
    const past = add(foot.tip, scale(unit(sub(foot.tip, foot.foot)), BEYOND));
    const connector = [straight(foot.foot, foot.tip), straight(foot.tip, past)];
    const length = distance(foot.foot, foot.tip);
    const base = { dart: dart.id, piece: piece.id };
    if (apart) return [{ ...base, chain: connector, foot: 0, tip: length }];
    const ways =
      feet.length === 1
        ? (['start', 'end'] as const)
        : [rank === 0 ? ('start' as const) : rank === feet.length - 1 ? ('end' as const) : nearer(foot.at)];
    return ways.map((from, _, { length: count }): LinePath => {
      const run = from === 'start' ? foot.at : whole - foot.at;
      // With the foot on the line's end there is nothing to cut along.
      const along: Chain =
        run < LEAST
          ? []
          : from === 'start'
            ? subchain(line.chain, 0, foot.at)
            : reverseChain(subchain(line.chain, foot.at, whole));
      const edge = line.ends[from === 'start' ? 0 : 1];
      const path = { ...base, from, chain: [...along, ...connector], foot: run, tip: run + length };
      return count > 1 && edge !== undefined ? { ...path, edge } : path;
    });
  });
}

/** Cuts along the line and up the connector. */
export const slash: ToolSpec = scissors({
  id: 'slash',
  paths: cutPaths,
  command: ({ work }, path, past) => {
    const line = lineOf(work);
    const from = path.from === undefined ? {} : { from: path.from };
    return line && { do: 'slash', dart: path.dart, line: line.id, ...from, past };
  },
  end: ({ dart }) => `${dart}/bust-point`,
});
