import { fitStroke } from '../../geometry/fit-stroke.ts';
import { cross, distance, dot } from '../../geometry/point.ts';
import { nearestOnChain } from '../../geometry/nearest.ts';
import { tangentAt } from '../../geometry/segment.ts';
import { atan2 } from '../../geometry/trig.ts';
import type { Point } from '../../geometry/types.ts';
import { chainOf, outlineOf } from '../../pattern/outline.ts';
import { anchorInside, anchorWith, fractionAt } from '../../recipe/anchors.ts';
import type { Anchor, DrawCurve, Work } from '../../recipe/types.ts';
import { frontOf, lineOf, type Scene } from '../scene.ts';
import { laidOn, type OnEdge } from '../stroke.ts';
import type { Reading, ToolSpec } from '../tool-spec.ts';
import { passes } from './draw-line.ts';

const LINE = 'line';
/** The curve runs within this of the stroke, mm at full size: half a millimetre at half scale, a pencil line. */
const TOLERANCE = 1;
/** On a small view within this part of the reach, which is not quite 3 px there: a hand's wavering that can hardly be seen is not kept. */
const OF_REACH = 1 / 4;
/** A shorter stroke is a slip of the hand, mm. */
const SHORTEST = 20;
/** A break of direction that was meant or made, not rounding, radians. */
const BREAK = 0.1;

/** The command for a stroke on the front: its ends put on the edges within `reach`, the rest fitted within `tolerance`; mm. */
export function curveOf(
  work: Work,
  stroke: readonly Point[],
  reach: number,
  tolerance = TOLERANCE,
): DrawCurve | undefined {
  const front = frontOf(work);
  if (!front || !work.opened) return undefined;
  const laid = laidOn(front, stroke, reach);
  const length = laid.stroke.reduce((sum, p, i) => sum + (i > 0 ? distance(laid.stroke[i - 1]!, p) : 0), 0);
  if (length < SHORTEST) return undefined;
  const { cubics, kinks } = fitStroke(laid.stroke, tolerance);
  const joints = [cubics[0]!.a, ...cubics.map((s) => s.d)];
  const ends = [laid.start, ...cubics.slice(1).map(() => undefined), laid.end];
  const at = joints.map((joint, i) => jointAnchor(work, joint, ends[i]));
  const points = [
    at[0]!,
    ...cubics.flatMap(({ b, c }, i): Anchor[] => [
      anchorWith(work, 'front', b, at[i]!),
      anchorWith(work, 'front', c, at[i + 1]!),
      at[i + 1]!,
    ]),
  ];
  return { do: 'draw-curve', line: LINE, points, kinks: kinks.length };
}

const jointAnchor = (work: Work, joint: Point, on: OnEdge | undefined): Anchor =>
  on ? { on: on.edge.id, at: fractionAt(on.edge.chain, on.point) } : anchorInside(work, 'front', joint);

/** The corners that a line drawn in one stroke kept, each with its angle. */
function kinksOf(work: Work): Reading[] {
  const line = lineOf(work);
  if (!line?.kinks) return [];
  return line.chain.flatMap((s, i): Reading[] => {
    if (i === 0) return [];
    const [u, v] = [tangentAt(line.chain[i - 1]!, 1), tangentAt(s, 0)];
    const value = Math.abs(atan2(cross(u, v), dot(u, v)));
    return value < BREAK ? [] : [{ id: `kink:${i}`, unit: 'rad', value, piece: 'front', from: s.a }];
  });
}

/** Draws the style line in one stroke, which is smoothed to a few cubics; a new stroke draws the line anew. */
export const drawCurve: ToolSpec = {
  id: 'draw-curve',
  trail: true,
  targets: () => [],
  press: ({ work, reach }: Scene, point, over) => {
    const front = frontOf(work);
    if (!front || !work.opened) return undefined;
    // The hand may begin a little off the paper: what runs over is cut off.
    const near =
      over.piece === 'front' || nearestOnChain(chainOf(outlineOf(front)), point).distance <= 3 * reach;
    return near ? { target: 'stroke', how: 'carry' } : undefined;
  },
  propose: (scene, grip) => {
    const { work, reach } = scene;
    const command = curveOf(work, grip.trail ?? [], reach, Math.max(TOLERANCE, OF_REACH * reach));
    return command && { command };
  },
  readings: (scene, work) => [...passes(scene, work), ...kinksOf(work)],
};
