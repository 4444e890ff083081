import { chainLength, pointAtLength, reverseChain, subchain } from '../../geometry/chain.ts';
import { nearestOnChain } from '../../geometry/nearest.ts';
import { add, distance, scale, sub, unit } from '../../geometry/point.ts';
import { line as straight } from '../../geometry/segment.ts';
import type { Chain } from '../../geometry/types.ts';
import type { Work } from '../../recipe/types.ts';
import { dartsOf, lineOf, type Scene } from '../scene.ts';
import type { Grip, ToolSpec, ToolTarget } from '../tool.ts';

/** How far past the tip the scissors may run, mm. */
const BEYOND = 12;
/** A shorter way along the line is none, mm. */
const LEAST = 1e-6;

export interface CutPath {
  readonly dart: string;
  readonly piece: string;
  readonly from?: 'start' | 'end';
  /** From the edge to the tip, and on past it. */
  readonly chain: Chain;
  /** mm from the chain's start to the connector's foot and to the tip. */
  readonly foot: number;
  readonly tip: number;
}

/** The ways a pair of scissors can go: along the line from the end that is nearer to the foot, then up the connector. */
export function cutPaths(scene: Scene): readonly CutPath[] {
  const line = lineOf(scene.work);
  if (!line) return [];
  const whole = chainLength(line.chain);
  const apart = !scene.work.pieces.some((piece) => piece.id === 'front');
  const feet = Object.entries(line.feet).sort((a, b) => a[1].at - b[1].at);
  return dartsOf(scene).flatMap(({ piece, dart }): CutPath[] => {
    const rank = feet.findIndex(([id]) => id === dart.id);
    const foot = feet[rank]?.[1];
    if (!foot || distance(foot.foot, foot.tip) < 1e-6 || piece.hinges.some((hinge) => hinge.dart === dart.id))
      return [];
    const past = add(foot.tip, scale(unit(sub(foot.tip, foot.foot)), BEYOND));
    const connector = [straight(foot.foot, foot.tip), straight(foot.tip, past)];
    const length = distance(foot.foot, foot.tip);
    const base = { dart: dart.id, piece: piece.id };
    if (apart) return [{ ...base, chain: connector, foot: 0, tip: length }];
    const from =
      rank === 0 && feet.length > 1
        ? 'start'
        : rank === feet.length - 1 && rank > 0
          ? 'end'
          : foot.at * 2 <= whole
            ? 'start'
            : 'end';
    const run = from === 'start' ? foot.at : whole - foot.at;
    // With the foot on the line's end there is nothing to cut along.
    const along: Chain =
      run < LEAST
        ? []
        : from === 'start'
          ? subchain(line.chain, 0, foot.at)
          : reverseChain(subchain(line.chain, foot.at, whole));
    return [{ ...base, from, chain: [...along, ...connector], foot: run, tip: run + length }];
  });
}

const pathOf = (scene: Scene, grip: Grip): CutPath | undefined =>
  cutPaths(scene).find((path) => path.dart === grip.target.slice(4));

/** mm along the path at which the scissors are; they hold at the tip. */
function reached(scene: Scene, path: CutPath, grip: Grip): number {
  const at = nearestOnChain(path.chain, grip.at).length;
  return Math.abs(at - path.tip) <= Math.max(scene.reach, 0.05) ? path.tip : at;
}

/** What the scissors have cut so far, for the preview, and on which piece. */
function cutSoFar(scene: Scene, grip: Grip): { chain: Chain; piece: string } | undefined {
  const path = pathOf(scene, grip);
  const at = path && reached(scene, path, grip);
  if (!path || at === undefined || at <= 0.01) return undefined;
  return { chain: subchain(path.chain, 0, at), piece: path.piece };
}

/** Cuts along the line and up the connector: the scissors are pulled (or nudged) along that path and hold at the tip. */
export const slash: ToolSpec = {
  id: 'slash',
  targets: (scene) =>
    cutPaths(scene).flatMap((path): ToolTarget[] => {
      const start: ToolTarget = {
        id: `cut:${path.dart}`,
        kind: 'scissors',
        point: path.chain[0]!.a,
        piece: path.piece,
        how: 'carry',
        dart: path.dart,
        at: 0,
      };
      return [
        start,
        {
          ...start,
          id: `tip:${path.dart}`,
          kind: 'tip',
          point: pointAtLength(path.chain, path.tip),
          at: path.tip,
          ref: `${path.dart}/bust-point`,
        },
      ];
    }),
  pull: (scene, grip, point) => {
    const path = pathOf(scene, grip);
    return path ? pointAtLength(path.chain, reached(scene, path, { ...grip, at: point })) : point;
  },
  nudge: (scene, grip, by) => {
    const path = pathOf(scene, grip);
    if (!path) return grip.at;
    const now = nearestOnChain(path.chain, grip.at).length;
    const next = Math.max(0, now + by.x + by.y);
    const passes = now < path.tip - 1e-6 && next > path.tip;
    return pointAtLength(path.chain, passes ? path.tip : next);
  },
  propose: (scene, grip) => {
    const path = pathOf(scene, grip);
    const line = lineOf(scene.work);
    if (!path || !line) return undefined;
    const at = reached({ ...scene, reach: 0 }, path, grip);
    if (at <= path.foot) return undefined;
    const past = Math.abs(at - path.tip) < 0.05 ? 0 : at - path.tip;
    const from = path.from === undefined ? {} : { from: path.from };
    return { command: { do: 'slash', dart: path.dart, line: line.id, ...from, past } };
  },
  cut: cutSoFar,
  readings: (scene, _work: Work, grip) => {
    const path = grip && pathOf(scene, grip);
    if (!grip || !path) return [];
    const value = path.tip - reached(scene, path, grip);
    return [
      {
        id: 'to-tip',
        unit: 'mm',
        value,
        piece: path.piece,
        from: grip.at,
        dart: path.dart,
      },
    ];
  },
};
