import { chainEnd, chainStart } from '../../geometry/chain.ts';
import { distance, sub } from '../../geometry/point.ts';
import { angleBetween } from '../../geometry/trig.ts';
import type { Point } from '../../geometry/types.ts';
import { legsOf } from '../../pattern/outline.ts';
import type { Dart, Piece } from '../../pattern/types.ts';
import { snap } from '../../recipe/snap.ts';
import { dartsOf, landmarkIn, type Scene } from '../scene.ts';
import type { ToolSpec, ToolTarget } from '../tool-spec.ts';
import { tipOf } from './dart-legs.ts';

const snapped = (scene: Scene, point: Point, piece: string) =>
  snap(scene.work, point, Math.max(scene.reach, 0.01), ['landmark'], piece);

/** The angle that the legs of a dart make when its point is put there. */
function angleAt(piece: Piece, dart: Dart, tip: Point) {
  const legs = legsOf(piece, dart);
  if (!legs) return [];
  const [to, other] = [chainStart(legs.into.chain), chainEnd(legs.outOf.chain)];
  const value = Math.abs(angleBetween(sub(to, tip), sub(other, tip)));
  return [{ id: 'angle', unit: 'rad', value, from: tip, to, other } as const];
}

/** Takes both legs of a dart up: its point is pulled to the bust point, or wherever it is put. */
export const extendDart: ToolSpec = {
  id: 'extend-dart',
  targets: (scene) =>
    dartsOf(scene).flatMap(({ piece, dart }): ToolTarget[] => {
      const tip = tipOf(piece, dart);
      const bust = landmarkIn([piece], dart.bustPoint)?.point;
      if (!tip || dart.state === 'closed' || piece.hinges.some((hinge) => hinge.dart === dart.id)) return [];
      const own: ToolTarget = {
        id: `tip:${dart.id}`,
        kind: 'tip',
        point: tip,
        piece: piece.id,
        how: 'carry',
        dart: dart.id,
        done: dart.state === 'working',
      };
      if (!bust || distance(bust, tip) < 1) return [own];
      return [
        own,
        {
          id: `to:${dart.id}`,
          kind: 'landmark',
          point: bust,
          piece: piece.id,
          how: 'carry',
          ref: dart.bustPoint,
          dart: dart.id,
        },
      ];
    }),
  pull: (scene, grip, point) => snapped(scene, point, grip.piece ?? 'front').point,
  propose: (scene, grip) => {
    const dart = grip.target.slice(grip.target.indexOf(':') + 1);
    // The place to go to may be picked as well as the point that goes there.
    if (grip.target.startsWith('tip:') && distance(grip.from, grip.at) < 0.01) return undefined;
    return {
      command: { do: 'extend-dart', dart, to: snapped(scene, grip.at, grip.piece ?? 'front').anchor },
    };
  },
  readings: (scene, work, grip) => {
    if (!grip) return [];
    const id = grip.target.slice(grip.target.indexOf(':') + 1);
    const found = dartsOf(scene).find((one) => one.dart.id === id);
    const bust = found && landmarkIn(work.pieces, found.dart.bustPoint)?.point;
    if (!bust) return [];
    const { piece, dart } = found;
    const base = { piece: grip.piece ?? 'front', dart: dart.side } as const;
    return [
      { ...base, id: 'from-bust', unit: 'mm', value: distance(bust, grip.at), from: bust, to: grip.at },
      ...angleAt(piece, dart, grip.at).map((reading) => ({ ...base, ...reading })),
    ];
  },
};
