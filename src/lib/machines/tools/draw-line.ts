import { chainLength, pointAtLength } from '../../geometry/chain.ts';
import { nearestOnChain } from '../../geometry/nearest.ts';
import { distance } from '../../geometry/point.ts';
import type { Point } from '../../geometry/types.ts';
import { anchorInside } from '../../recipe/anchors.ts';
import { snap } from '../../recipe/snap.ts';
import type { Anchor, DrawnLine, Work } from '../../recipe/types.ts';
import { bustPoints, frontOf, lineOf, middleOf, type Scene } from '../scene.ts';
import type { Grip, Reading, ToolSpec, ToolTarget } from '../tool-spec.ts';

const LINE = 'line';

/** An end belongs on an edge, and only where along it is the learner's to say: half an inch off is near enough, mm. */
const END = 12.7;

/** Both ends go to an edge; points in between stay where they are put. */
const anchorFor = ({ work, reach }: Scene, point: Point, end: boolean): Anchor =>
  end
    ? snap(work, point, Math.max(reach, END), ['edge'], 'front').anchor
    : anchorInside(work, 'front', point);

const anchored = new WeakMap<Point, { work: Work; end: boolean; anchor: Anchor }>();

/** The anchor of each point of a line; a point that stays where it is on the same table is worked out once. */
function redrawn(scene: Scene, points: readonly Point[]): Anchor[] {
  return points.map((point, i) => {
    const end = i === 0 || i === points.length - 1;
    const known = anchored.get(point);
    if (known?.work === scene.work && known.end === end) return known.anchor;
    const anchor = anchorFor(scene, point, end);
    anchored.set(point, { work: scene.work, end, anchor });
    return anchor;
  });
}

/** Arc length of each point of the line, mm. */
const stations = (line: DrawnLine): number[] =>
  line.points.map((point, i) =>
    i === 0
      ? 0
      : i === line.points.length - 1
        ? chainLength(line.chain)
        : nearestOnChain(line.chain, point).length,
  );

function withGrip(scene: Scene, grip: Grip): readonly Point[] | undefined {
  const line = lineOf(scene.work);
  const [kind, nth] = grip.target.split(':');
  const i = Number(nth);
  if (!line) return distance(grip.from, grip.at) > 1 ? [grip.from, grip.at] : undefined;
  if (kind === 'point') return line.points.map((point, j) => (j === i ? grip.at : point));
  if (kind === 'add') return [...line.points.slice(0, i + 1), grip.at, ...line.points.slice(i + 1)];
  return undefined;
}

/** The nearest the line comes to each bust point; `line` undefined gives none. */
export function passes(scene: Scene, work: Work): Reading[] {
  const line = lineOf(work);
  if (!line) return [];
  return bustPoints({ ...scene, work }).map(({ dart, piece, point }) => {
    const near = nearestOnChain(line.chain, point);
    return {
      id: 'passes',
      unit: 'mm',
      value: near.distance,
      piece: piece.id,
      from: point,
      to: near.point,
      dart: dart.id,
    };
  });
}

/** Draws the style line: the first pull lays it from edge to edge; then its points are moved, added between, taken out. */
export const drawLine: ToolSpec = {
  id: 'draw-line',
  targets: ({ work }) => {
    const front = frontOf(work);
    const line = lineOf(work);
    if (!front || !work.opened) return [];
    if (!line)
      return front.parts
        .flatMap((part) => part.edges)
        .filter((edge) => edge.role !== 'dart-leg')
        .map((edge) => ({
          id: `start:${edge.id}`,
          kind: 'edge',
          point: middleOf(edge.chain),
          piece: 'front',
          how: 'carry',
          ref: edge.id,
          anywhere: true,
        }));
    const at = stations(line);
    const last = line.points.length - 1;
    return line.points.flatMap((point, i): ToolTarget[] => {
      const end = i === 0 ? line.ends[0] : i === last ? line.ends[1] : undefined;
      const own: ToolTarget = {
        id: `point:${i}`,
        kind: 'point',
        point,
        piece: 'front',
        how: 'carry',
        at: at[i]!,
        removable: i > 0 && i < last,
        ...(end === undefined ? {} : { ref: end }),
      };
      if (i === last) return [own];
      const between = (at[i]! + at[i + 1]!) / 2;
      return [
        own,
        {
          id: `add:${i}`,
          kind: 'add',
          point: pointAtLength(line.chain, between),
          piece: 'front',
          how: 'carry',
          at: between,
        },
      ];
    });
  },
  press: (scene, point, over) => {
    const line = lineOf(scene.work);
    if (!scene.work.opened) return undefined;
    const onFront = () =>
      over.piece === 'front' || snap(scene.work, point, scene.reach, ['edge'], 'front').snapped !== 'none';
    if (!line) return onFront() ? { target: 'start', how: 'carry' } : undefined;
    const near = nearestOnChain(line.chain, point);
    if (near.distance > scene.reach) return undefined;
    const span = stations(line).findLastIndex((at) => at <= near.length);
    return { target: `add:${Math.min(span, line.points.length - 2)}`, how: 'carry' };
  },
  pull: (scene, grip, point) => {
    const line = lineOf(scene.work);
    const end = !line || grip.target === 'point:0' || grip.target === `point:${line.points.length - 1}`;
    return end ? snap(scene.work, point, Math.max(scene.reach, END), ['edge'], 'front').point : point;
  },
  nudge: (scene, grip, by) => {
    const to = { x: grip.at.x + by.x, y: grip.at.y + by.y };
    const line = lineOf(scene.work);
    const last = line ? line.points.length - 1 : -1;
    if (line && grip.target !== 'point:0' && grip.target !== `point:${last}`) return to;
    // An end that lies on an edge stays on it: keys slide it along.
    const reach = Math.max(scene.reach, 2 * distance(grip.at, to));
    return snap(scene.work, to, line ? reach : 0.5, ['edge'], 'front').point;
  },
  propose: (scene, grip) => {
    const points = withGrip(scene, grip);
    return points && { command: { do: 'draw-line', line: LINE, points: redrawn(scene, points) } };
  },
  remove: (scene, target) => {
    const line = lineOf(scene.work);
    const i = Number(target.split(':')[1]);
    if (!line || !(i > 0 && i < line.points.length - 1)) return undefined;
    return {
      do: 'draw-line',
      line: LINE,
      points: redrawn(
        scene,
        line.points.filter((_, j) => j !== i),
      ),
    };
  },
  readings: (scene, work) => passes(scene, work),
};
