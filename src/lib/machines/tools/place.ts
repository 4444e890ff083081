import { sub } from '../../geometry/point.ts';
import { pieceSet } from '../scene.ts';
import type { ToolSpec } from '../tool-spec.ts';
import { pieceOf, wholePiece } from './whole-piece.ts';

/** Moves a piece about on the table; the work stays what it is. */
export const place: ToolSpec = {
  id: 'place',
  targets: (scene) => pieceSet(scene.work, scene.fabric).map((piece) => wholePiece(piece, 'carry')),
  press: (_scene, _point, over) =>
    over.piece === undefined ? undefined : { target: `piece:${over.piece}`, how: 'carry' },
  propose: (scene, grip) => {
    const piece = pieceOf(grip.target);
    const lies = scene.work.placed?.[piece] ?? { dx: 0, dy: 0, angle: 0 };
    const by = sub(grip.at, grip.from);
    return { command: { do: 'place', piece, dx: lies.dx + by.x, dy: lies.dy + by.y, angle: lies.angle } };
  },
};
