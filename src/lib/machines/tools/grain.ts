import { lerp, norm, sub } from '../../geometry/point.ts';
import { PI, angleBetween } from '../../geometry/trig.ts';
import type { Point } from '../../geometry/types.ts';
import { apply } from '../../recipe/apply.ts';
import { anchorInside } from '../../recipe/anchors.ts';
import { pieceSet, type Scene } from '../scene.ts';
import type { Grip, ToolSpec } from '../tool-spec.ts';
import { centreOf } from './whole-piece.ts';

/** A grainline drawn this near to the centre front's direction lies along it, radians (2°). */
const ALONG = (2 * PI) / 180;
/** Shorter than this a pull is no direction, mm. */
const SHORTEST = 25;

const pieceOf = (grip: Grip): string => grip.target.slice('grain:'.length);

/** Direction of a grainline at angle 0 on this piece: what `apply` makes of it, so that nothing is known twice. */
function zero(scene: Scene, piece: string, at: Point): Point | undefined {
  const tried = apply(scene.work, { do: 'grain', piece, at: anchorInside(scene.work, piece, at), angle: 0 });
  const line = 'work' in tried ? tried.work.pieces.find((one) => one.id === piece)?.grainline : undefined;
  return line && sub(line.to, line.from);
}

/** Draws the grainline: pull it where it shall lie, or move its handle and type the angle. */
export const grain: ToolSpec = {
  id: 'grain',
  targets: (scene) =>
    pieceSet(scene.work, scene.fabric).map((piece) => ({
      id: `grain:${piece.id}`,
      kind: 'handle',
      piece: piece.id,
      how: 'carry',
      ref: piece.id,
      done: piece.grainline !== undefined,
      point: piece.grainline ? lerp(piece.grainline.from, piece.grainline.to, 0.5) : centreOf(piece),
    })),
  press: (_scene, _point, over) =>
    over.piece === undefined ? undefined : { target: `draw-:${over.piece}`, how: 'carry' },
  propose: (scene, grip) => {
    const piece = grip.target.startsWith('grain:') ? pieceOf(grip) : grip.target.slice('draw-:'.length);
    const drawn = sub(grip.at, grip.from);
    const pulled = grip.target.startsWith('draw-:');
    if (pulled && norm(drawn) < SHORTEST) return undefined;
    const at = pulled ? lerp(grip.from, grip.at, 0.5) : grip.at;
    const base = zero(scene, piece, at);
    if (!base) return undefined;
    let angle = 0;
    if (pulled) {
      angle = angleBetween(base, drawn);
      // A grainline has no head: pulled upwards it is the same line.
      if (angle > PI / 2) angle -= PI;
      if (angle < -PI / 2) angle += PI;
      if (Math.abs(angle) < ALONG) angle = 0;
    }
    return { command: { do: 'grain', piece, at: anchorInside(scene.work, piece, at), angle } };
  },
  readings: (scene, _work, grip) => {
    const drawn = grip && grain.propose(scene, grip);
    if (!drawn || !('command' in drawn) || drawn.command.do !== 'grain') return [];
    const piece = drawn.command.piece;
    return [{ id: 'off-grain', unit: 'rad', value: drawn.command.angle, piece, from: grip.at }];
  },
};
