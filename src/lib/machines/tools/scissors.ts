import { pointAtLength } from '../../geometry/chain.ts';
import { subchain } from '../../geometry/subchain.ts';
import { nearestOnChain } from '../../geometry/nearest.ts';
import { distance } from '../../geometry/point.ts';
import type { Chain } from '../../geometry/types.ts';
import type { Command } from '../../recipe/types.ts';
import type { Scene } from '../scene.ts';
import type { Grip, ToolSpec, ToolTarget } from '../tool-spec.ts';

/** How far past the tip the scissors may run, mm. */
export const BEYOND = 12;

/** A way that a pair of scissors can go. */
export interface CutPath {
  readonly dart: string;
  /** The edge where it begins, where the same cut can be made from another edge too. */
  readonly edge?: string;
  readonly piece: string;
  /** From the edge to the tip, and on past it. */
  readonly chain: Chain;
  /** mm from the chain's start to where a cut begins to be one, and to the tip. */
  readonly foot: number;
  readonly tip: number;
}

/** What kind of scissors: the ways they can go, and the command for one that ends `past` mm past the tip. */
interface Kind<P extends CutPath> {
  readonly id: ToolSpec['id'];
  readonly paths: (scene: Scene) => readonly P[];
  readonly command: (scene: Scene, path: P, past: number) => Command | undefined;
  /** Id of the landmark in which a way ends. */
  readonly end: (path: P) => string;
}

const keyOf = ({ dart, edge }: CutPath): string => (edge === undefined ? dart : `${dart} from ${edge}`);

/** Scissors that are pulled (or nudged) along a path, and hold at the tip. */
export function scissors<P extends CutPath>({ id, paths, command, end }: Kind<P>): ToolSpec {
  const pathOf = (scene: Scene, grip: Grip): P | undefined =>
    paths(scene).find((path) => keyOf(path) === grip.target.slice(4));

  /** mm along the path at which the scissors are; they hold at the tip. */
  function reached(scene: Scene, path: CutPath, grip: Grip): number {
    const at = nearestOnChain(path.chain, grip.at).length;
    return Math.abs(at - path.tip) <= Math.max(scene.reach, 0.05) ? path.tip : at;
  }

  return {
    id,
    targets: (scene) => {
      const tips: ToolTarget[] = [];
      const starts = paths(scene).map((path): ToolTarget => {
        const start: ToolTarget = {
          id: `cut:${keyOf(path)}`,
          kind: 'scissors',
          point: path.chain[0]!.a,
          piece: path.piece,
          how: 'carry',
          dart: path.dart,
          at: 0,
          ...(path.edge !== undefined && { ref: path.edge }),
        };
        const point = pointAtLength(path.chain, path.tip);
        // Cuts that end in one point have one place there for all of them.
        if (!tips.some((tip) => distance(tip.point, point) < 0.5))
          tips.push({
            ...start,
            id: `tip:${keyOf(path)}`,
            kind: 'tip',
            point,
            at: path.tip,
            ref: end(path),
          });
        return start;
      });
      return [...starts, ...tips];
    },
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
      if (!path) return undefined;
      const at = reached({ ...scene, reach: 0 }, path, grip);
      if (at <= path.foot) return undefined;
      const given = command(scene, path, Math.abs(at - path.tip) < 0.05 ? 0 : at - path.tip);
      return given && { command: given };
    },
    cut: (scene, grip) => {
      const path = pathOf(scene, grip);
      const at = path && reached(scene, path, grip);
      if (!path || at === undefined || at <= 0.01) return undefined;
      return { chain: subchain(path.chain, 0, at), piece: path.piece };
    },
    readings: (scene, _work, grip) => {
      const path = grip && pathOf(scene, grip);
      if (!grip || !path) return [];
      const value = path.tip - reached(scene, path, grip);
      const tip = pointAtLength(path.chain, path.tip);
      // A dimension line says it where the rest of the way is straight.
      const straight = value > 0.05 && Math.abs(distance(grip.at, tip) - value) < 0.01;
      const to = straight ? { to: tip } : {};
      return [{ id: 'to-tip', unit: 'mm', value, piece: path.piece, from: grip.at, ...to, dart: path.dart }];
    },
  };
}
