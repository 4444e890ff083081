import type { Point } from '../../geometry/types.ts';
import { styleSeam } from '../../pattern/style-seam.ts';
import type { Piece, Treatment } from '../../pattern/types.ts';
import { frontPieces, nearestOf, pieceSet, isBack, type Scene } from '../scene.ts';
import type { Grip, ToolSpec, ToolTarget } from '../tool-spec.ts';
import { leftovers } from './bridge.ts';
import { asFabric, groupTargets, pieceAnd, seamNotches, seamPoint, thereOf } from './seam.ts';

/** Pieces whose opening is bridged and still waits for its treatment. */
const bridged = (scene: Scene): readonly { piece: Piece; treatment: Treatment }[] =>
  frontPieces(scene).flatMap((piece) =>
    piece.treatments.filter((one) => one.kind === 'bridged').map((treatment) => ({ piece, treatment })),
  );

/** The notches that a held one may be pulled to: of its own piece, since the partner's lie in the same place of theirs. */
const beside = (scene: Scene, grip: Grip): readonly ToolTarget[] =>
  ease.targets(scene).filter((target) => target.piece === pieceAnd(grip.target).piece);

/** Marks the bridged excess as eased: pull from one notch to another. */
export const ease: ToolSpec = {
  id: 'ease',
  targets: (scene) => bridged(scene).flatMap(({ piece }) => seamNotches(piece, 'carry')),
  // Notches stand far apart: which one is meant is clear from farther off than usual.
  pull: (scene, grip, point) => nearestOf(beside(scene, grip), point, 2 * scene.reach)?.point ?? point,
  propose: (scene, grip) => {
    const { piece, rest: from } = pieceAnd(grip.target);
    const other = nearestOf(beside(scene, grip), grip.at, 0.01);
    const treatment = bridged(scene).find((one) => one.piece.id === piece)?.treatment;
    if (!other?.ref || !treatment || other.id === grip.target) return undefined;
    return { command: { do: 'ease', piece, dart: treatment.dart, from, to: other.ref } };
  },
  readings: leftovers,
};

/** Takes the measured excess out at one end of the seam. */
export const takeOut: ToolSpec = {
  id: 'take-out',
  targets: (scene) =>
    bridged(scene).flatMap(({ piece, treatment }) => {
      const seam = styleSeam(piece);
      const end = (which: 'start' | 'end', point: Point | undefined): ToolTarget[] =>
        point
          ? [
              {
                id: `end:${piece.id}:${which}`,
                kind: 'handle',
                point,
                piece: piece.id,
                how: 'tap',
                ref: which,
                dart: treatment.dart,
              },
            ]
          : [];
      return seam
        ? [...end('start', seamPoint(piece, seam, 0)), ...end('end', seamPoint(piece, seam, seam.length))]
        : [];
    }),
  propose: (scene, grip) => {
    const { piece, rest } = pieceAnd(grip.target);
    const treatment = bridged(scene).find((one) => one.piece.id === piece)?.treatment;
    const end = rest === 'start' ? 'start' : 'end';
    return treatment && { command: { do: 'take-out', piece, dart: treatment.dart, end, amount: 'measured' } };
  },
  readings: leftovers,
};

/** Seams that the back can be trued to. */
export const TRUED = ['right/shoulder', 'left/shoulder', 'right/side', 'left/side'];

/** Trues the back's shoulder or side to the front as it will be sewn. */
export const trueBack: ToolSpec = {
  id: 'true',
  acts: (scene) =>
    scene.work.opened
      ? thereOf(TRUED, scene.work).map((edge) => ({
          id: `true:${edge}`,
          about: edge,
          command: { do: 'true', edge, ...asFabric(scene) },
        }))
      : [],
  targets: (scene) =>
    frontPieces(scene)
      .flatMap((piece) => groupTargets(piece, () => false))
      .filter((target) => TRUED.includes(target.ref ?? '')),
  propose: (scene, grip) => ({
    command: { do: 'true', edge: pieceAnd(grip.target).rest, ...asFabric(scene) },
  }),
};

/** Marks a notch again, from the partner. */
export const renotch: ToolSpec = {
  id: 'renotch',
  targets: (scene) =>
    pieceSet(scene.work, scene.fabric)
      .filter((piece) => !isBack(piece) && piece.treatments.length > 0)
      .flatMap((piece) => seamNotches(piece, 'tap')),
  propose: (_scene, grip) => {
    const { piece, rest: notch } = pieceAnd(grip.target);
    return { command: { do: 'renotch', piece, notch } };
  },
};
