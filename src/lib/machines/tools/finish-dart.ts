import { distance, dot, lerp, sub } from '../../geometry/point.ts';
import type { Point } from '../../geometry/types.ts';
import { middleOfDart, sewnDart } from '../../pattern/back-off.ts';
import { finishedDart } from '../../pattern/mouth.ts';
import { ALIKE } from '../../pattern/true-legs.ts';
import type { Dart, Fold, Piece } from '../../pattern/types.ts';
import type { Cap, Work } from '../../recipe/types.ts';
import { dartsOf, type Scene } from '../scene.ts';
import type { Grip, Reading, ToolSpec, ToolTarget } from '../tool.ts';

/** A dart that opens the outline, and its middle. */
interface Open {
  readonly piece: Piece;
  readonly dart: Dart;
  readonly tip: Point;
  readonly mouth: Point;
}

/** The darts of the fronts that can be finished. */
export const openMouths = (scene: Scene): readonly Open[] =>
  dartsOf(scene).flatMap(({ piece, dart }) => {
    const middle = middleOfDart(piece, dart.id);
    return middle ? [{ piece, dart, ...middle }] : [];
  });

const dartIn = (target: string): string => target.slice(target.indexOf(':') + 1);
const openIn = (scene: Scene, target: string): Open | undefined =>
  openMouths(scene).find(({ dart }) => dart.id === dartIn(target));

/** How far down the middle of a dart a point is, mm; never beyond the edge. */
function down({ tip, mouth }: Open, point: Point): number {
  const whole = distance(tip, mouth);
  return Math.min(whole, Math.max(0, dot(sub(point, tip), sub(mouth, tip)) / whole));
}
const downAt = (open: Open, mm: number): Point =>
  lerp(open.tip, open.mouth, mm / distance(open.tip, open.mouth));

/** Draws a dart to its sewn point: the point is pulled down the middle of the dart. */
export const backOff: ToolSpec = {
  id: 'back-off',
  targets: (scene) =>
    openMouths(scene).map(({ piece, dart, tip }): ToolTarget => {
      const known = finishedDart(piece, dart.id);
      return {
        id: `tip:${dart.id}`,
        kind: 'tip',
        point:
          known?.sewnPoint ?? (dart.state === 'sewn' ? sewnDart(piece, dart.id)?.point : undefined) ?? tip,
        piece: piece.id,
        how: 'carry',
        dart: dart.id,
        done: known !== undefined,
      };
    }),
  pull: (scene, grip, point) => {
    const open = openIn(scene, grip.target);
    return open ? downAt(open, down(open, point)) : point;
  },
  nudge: (scene, grip, by) => {
    const open = openIn(scene, grip.target);
    return open ? downAt(open, Math.max(0, down(open, grip.at) + by.x + by.y)) : grip.at;
  },
  propose: (scene, grip) => {
    const open = openIn(scene, grip.target);
    if (!open || distance(grip.from, grip.at) < 0.01) return undefined;
    return { command: { do: 'back-off', dart: open.dart.id, by: down(open, grip.at) } };
  },
  readings: (scene, _work, grip) => {
    const open = grip && openIn(scene, grip.target);
    if (!grip || !open) return [];
    const value = down(open, grip.at);
    return [
      {
        id: 'backed-off',
        unit: 'mm',
        value,
        piece: open.piece.id,
        from: open.tip,
        to: grip.at,
        dart: open.dart.id,
      },
    ];
  },
};

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
