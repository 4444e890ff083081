import { frontPieces, type Scene } from '../scene.ts';
import type { Walk } from '../../recipe/types.ts';
import type { ToolSpec } from '../tool-spec.ts';
import { groupTargets, pieceAnd, thereOf } from './seam.ts';

export const SEAMS = ['style-line', 'right/shoulder', 'left/shoulder', 'right/side', 'left/side'] as const;
const SAYS: readonly Walk['says'][] = ['match', 'eased', 'differs'];

export const walkedSeam = (scene: Scene): string => String(scene.options['seam'] ?? SEAMS[0]);
export const walkedAlong = (scene: Scene): Walk['along'] =>
  scene.options['along'] === 'cut' ? 'cut' : 'seam';

/** Walks a seam: choose it, watch the two sides run beside each other, say what was found. */
export const walk: ToolSpec = {
  id: 'walk',
  options: (scene) => [
    { id: 'seam', kind: 'choice', value: walkedSeam(scene), choices: thereOf(SEAMS, scene.work) },
    { id: 'along', kind: 'choice', value: walkedAlong(scene), choices: ['seam', 'cut'] },
  ],
  acts: (scene) =>
    SAYS.map((says) => ({
      id: `says:${says}`,
      about: walkedSeam(scene),
      command: { do: 'walk', seam: walkedSeam(scene), along: walkedAlong(scene), says, as: scene.fabric },
    })),
  targets: (scene) =>
    frontPieces(scene)
      .flatMap((piece) => groupTargets(piece, (group) => scene.work.walked.some((one) => one.seam === group)))
      .filter((target) => SEAMS.some((seam) => seam === target.ref)),
  propose: (_scene, grip) => ({ options: { seam: pieceAnd(grip.target).rest } }),
};
