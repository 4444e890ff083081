import { sewnDart } from '../../pattern/back-off.ts';
import { foldsOf } from '../../pattern/folds.ts';
import { finishedDart } from '../../pattern/mouth.ts';
import { ALIKE } from '../../pattern/true-legs.ts';
import type { Fold } from '../../pattern/types.ts';
import type { Cap, Work } from '../../recipe/types.ts';
import { dartsOf, type Scene } from '../scene.ts';
import type { Grip, Reading, ToolOption, ToolSpec } from '../tool-spec.ts';
import { dartIn, openMouths } from './back-off.ts';
import { withEdge } from './slashes.ts';

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
  acts: (scene) =>
    uneven(scene).map((dart) => ({
      id: `legs:${dart}`,
      about: withEdge(scene.work, dart),
      command: legsOf(dart),
    })),
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

/** The open darts, each with the ways in which it can be folded. */
const foldable = (scene: Scene) =>
  openMouths(scene).map((open) => ({ ...open, folds: foldsOf(open.piece, open.dart.id) }));

/** One choice does for all darts that can be folded alike; else each has its own. */
function foldOptions(scene: Scene): readonly ToolOption[] {
  const all = foldable(scene);
  const alike = all.every(({ folds }) => folds.join() === all[0]?.folds.join());
  return (alike ? all.slice(0, 1) : all).map(({ dart, folds }) => ({
    id: alike ? 'fold' : `fold:${dart.id}`,
    kind: 'choice',
    value: foldOf(scene, dart.id, folds),
    choices: folds,
  }));
}

/** What was chosen for that dart, or for all of them, if it can be folded so; else the usual way. */
function foldOf({ options }: Scene, dart: string, folds: readonly Fold[]): Fold {
  const chosen = options[`fold:${dart}`] ?? options['fold'];
  return folds.find((fold) => fold === chosen) ?? folds[0] ?? 'centre';
}

/** Draws the cap of a dart: say which way it is folded, then choose it. */
export const cap: ToolSpec = {
  id: 'cap',
  options: foldOptions,
  acts: (scene) =>
    openMouths(scene).map(({ dart }) => ({
      id: `cap:${dart.id}`,
      about: withEdge(scene.work, dart.id),
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

function capOf(scene: Scene, dart: string): Cap {
  const folds = foldable(scene).find((open) => open.dart.id === dart)?.folds ?? [];
  return { do: 'cap', dart, fold: foldOf(scene, dart, folds) };
}
