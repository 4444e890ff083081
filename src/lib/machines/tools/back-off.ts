import { distance, dot, lerp, sub } from '../../geometry/point.ts';
import type { Point } from '../../geometry/types.ts';
import { middleOfDart, sewnDart } from '../../pattern/back-off.ts';
import { finishedDart } from '../../pattern/mouth.ts';
import type { Dart, Piece } from '../../pattern/types.ts';
import { dartsOf, type Scene } from '../scene.ts';
import type { ToolSpec, ToolTarget } from '../tool-spec.ts';

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

export const dartIn = (target: string): string => target.slice(target.indexOf(':') + 1);
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
    if (!open) return undefined;
    const by = down(open, grip.at);
    // Put down where it stands: a dart that the block draws to its sewn point is backed off by as much; else nothing was done.
    const stands = distance(grip.from, grip.at) < 0.01;
    if (stands && (by < 0.01 || finishedDart(open.piece, open.dart.id))) return undefined;
    return { command: { do: 'back-off', dart: open.dart.id, by } };
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
