import { chainLength } from '../../geometry/chain.ts';
import { nearestOnChain } from '../../geometry/nearest.ts';
import { distance } from '../../geometry/point.ts';
import { dartsOf, lineOf, type Scene } from '../scene.ts';
import type { Grip, ToolSpec, ToolTarget } from '../tool-spec.ts';
import { tipOf } from './dart-legs.ts';
import { alongLine } from './notch.ts';

/** As near as this to where it meets the line squarely the foot holds there, mm: at any zoom the same for a hand. */
const SQUARE = 1.5;
/** What lies as near as this to the nearest place is that place, mm: keys slide away from it and back by arc length. */
const SAME = 1e-6;

const tips = (scene: Scene) =>
  dartsOf(scene).flatMap(({ piece, dart }) => {
    const point = tipOf(piece, dart);
    const cut = piece.hinges.some((hinge) => hinge.dart === dart.id);
    return point && dart.state === 'working' && !cut ? [{ piece, dart, point }] : [];
  });

const dartOf = (grip: Grip): string => grip.target.slice(grip.target.indexOf(':') + 1);

/** Draws the connector from a dart's tip to the line. */
export const connect: ToolSpec = {
  id: 'connect',
  targets: (scene) =>
    lineOf(scene.work)
      ? tips(scene).flatMap(({ piece, dart, point }): ToolTarget[] => {
          const foot = lineOf(scene.work)?.feet[dart.id];
          const tip: ToolTarget = {
            id: `tip:${dart.id}`,
            kind: 'tip',
            point,
            piece: piece.id,
            how: 'carry',
            dart: dart.id,
            done: foot !== undefined,
          };
          return foot
            ? [tip, { ...tip, id: `foot:${dart.id}`, kind: 'handle', point: foot.foot, at: foot.at }]
            : [tip];
        })
      : [],
  // The foot slides along the line and holds at the nearest point, where the connector meets it squarely.
  pull: (scene, grip, point) => {
    const line = lineOf(scene.work);
    if (!line) return point;
    const tip = tips(scene).find(({ dart }) => dart.id === dartOf(grip));
    const place = nearestOnChain(line.chain, point);
    const square = tip && nearestOnChain(line.chain, tip.point);
    return square && Math.abs(square.length - place.length) <= Math.min(scene.reach / 2, SQUARE)
      ? square.point
      : place.point;
  },
  nudge: alongLine,
  propose: (scene, grip) => {
    const line = lineOf(scene.work);
    if (!line) return undefined;
    const whole = chainLength(line.chain);
    const made = { do: 'connect', dart: dartOf(grip), line: line.id } as const;
    const tip = tips(scene).find(({ dart }) => dart.id === made.dart);
    const square = tip && nearestOnChain(line.chain, tip.point);
    // What holds there is kept as what it is, and not as a share of the line.
    if (square && distance(square.point, grip.at) <= SAME)
      return { command: { ...made, at: square.length / whole, square: true } };
    return { command: { ...made, at: nearestOnChain(line.chain, grip.at).length / whole } };
  },
  readings: (scene, work) =>
    tips(scene).flatMap(({ dart, piece }) => {
      const foot = lineOf(work)?.feet[dart.id];
      return foot
        ? [
            {
              id: 'connector',
              unit: 'mm',
              value: distance(foot.foot, foot.tip),
              piece: piece.id,
              from: foot.tip,
              to: foot.foot,
              dart: dart.id,
            },
          ]
        : [];
    }),
};
