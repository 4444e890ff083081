import { sewnDart } from '../../pattern/back-off.ts';
import { finishedDart } from '../../pattern/mouth.ts';
import { ALIKE } from '../../pattern/true-legs.ts';
import type { Fold } from '../../pattern/types.ts';
import type { Cap, Work } from '../../recipe/types.ts';
import { dartsOf, type Scene } from '../scene.ts';
import type { Grip, Reading, ToolSpec } from '../tool-spec.ts';
import { dartIn, openMouths } from './back-off.ts';

/** By how much the legs of the darts differ that are drawn straight to a sewn point. */
function differing(scene: Scene, work: Work): readonly Reading[] {
  return dartsOf({ ...scene, work }).flatMap(({ piece, dart }): Reading[] => {
    const sewn = sewnDart(piece, dart.id);
    if (!sewn || !(sewn.angle > 0)) return [];
    const [a, b] = sewn.legs;
    return [
      { id: 'legs', unit: 'mm', value: Math.abs(a - b), piece: piece.id, from: sewn.point, dart: dart.id },
    ];
  });
}

/** Makes the legs of a dart alike. */
export const trueLegs: ToolSpec = {
  id: 'true-legs',
  acts: (scene) => uneven(scene).map((dart) => ({ id: `legs:${dart}`, about: dart, command: legsOf(dart) })),
  targets: (scene) =>
    openMouths(scene)
      .filter(({ dart }) => uneven(scene).includes(dart.id))
      .map(({ piece, dart, mouth }) => ({
        id: `mouth:${dart.id}`,
        kind: 'handle',
        point: mouth,
        piece: piece.id,
        how: 'tap',
        dart: dart.id,
      })),
  propose: (_scene, grip) => ({ command: legsOf(dartIn(grip.target)) }),
  readings: differing,
};

const legsOf = (dart: string) => ({ do: 'true-legs', dart }) as const;
const uneven = (scene: Scene): readonly string[] =>
  differing(scene, scene.work).flatMap(({ value, dart }) =>
    value > ALIKE && dart !== undefined ? [dart] : [],
  );

const FOLDS: readonly Fold[] = ['centre', 'side', 'up', 'down'];
const foldOf = (scene: Scene): Fold => FOLDS.find((fold) => fold === scene.options['fold']) ?? 'centre';

/** Draws the cap of a dart: say which way it is folded, then choose it. */
export const cap: ToolSpec = {
  id: 'cap',
  options: (scene) => [{ id: 'fold', kind: 'choice', value: foldOf(scene), choices: FOLDS }],
  acts: (scene) =>
    openMouths(scene).map(({ dart }) => ({
      id: `cap:${dart.id}`,
      about: dart.id,
      command: capOf(scene, dart.id),
    })),
  targets: (scene) =>
    openMouths(scene).map(({ piece, dart, mouth }) => ({
      id: `mouth:${dart.id}`,
      kind: 'handle',
      point: mouth,
      piece: piece.id,
      how: 'tap',
      dart: dart.id,
      done: finishedDart(piece, dart.id)?.fold !== undefined,
    })),
  propose: (scene, grip: Grip) => ({ command: capOf(scene, dartIn(grip.target)) }),
};

const capOf = (scene: Scene, dart: string): Cap => ({ do: 'cap', dart, fold: foldOf(scene) });
