import { chainLength, pointAtLength } from '../../geometry/chain.ts';
import { add, distance, lerp, scale, sub } from '../../geometry/point.ts';
import { angleBetween } from '../../geometry/trig.ts';
import type { Point } from '../../geometry/types.ts';
import type { Piece } from '../../pattern/types.ts';
import { anchorInside } from '../../recipe/anchors.ts';
import type { DrawSlash } from '../../recipe/types.ts';
import { frontOf, nearestOf, type Scene } from '../scene.ts';
import type { Grip, Reading, ToolSpec, ToolTarget } from '../tool-spec.ts';
import {
  anchorAt,
  edgePlace,
  endAnchor,
  nextSlash,
  placeReadings,
  slashEdges,
  slashEnds,
  uncutSlashes,
  type EdgePlace,
  type Uncut,
} from './slashes.ts';

/** An inch less an eighth: between the 3/4 in and the inch off the bust point at which alternate pivots lie, mm. */
const CIRCLE = 22.2;
/** From the nearest end of steps along two axes a point lies half a diagonal off at most, in steps; and of the usual steps, mm. */
const NEAREST_STEP = 0.71;
const NEAREST = 1.42;
const ORIGIN: Point = { x: 0, y: 0 };
/** A start this near to an edge is on it, mm. */
const ON = 0.01;

const circleOf = (scene: Scene): number => {
  const value = scene.options['circle'];
  return typeof value === 'number' ? value : CIRCLE;
};

/** Where a line runs while something of it is held. */
interface Held {
  readonly slash: string;
  readonly from: EdgePlace;
  readonly via?: Point | undefined;
  readonly to: Point;
}

function heldBy(scene: Scene, front: Piece, grip: Grip): Held | undefined {
  const [head, ...rest] = grip.target.split(':');
  const id = rest.join(':');
  if (head === 'start') {
    const from = edgePlace(front, grip.from, id === '' ? undefined : id);
    return from && { slash: nextSlash(scene.work), from, to: grip.at };
  }
  if (head === 'end') {
    const from = edgePlace(front, grip.at);
    return from && from.off <= ON ? { slash: nextSlash(scene.work), from, to: grip.from } : undefined;
  }
  const drawn = uncutSlashes(front).find((one) => one.id === id);
  const from = drawn && edgePlace(front, head === 'from' ? grip.at : drawn.from);
  if (!drawn || !from) return undefined;
  const own = { slash: id, from, via: drawn.via, to: drawn.to };
  if (head === 'to') return { ...own, to: grip.at };
  return head === 'via' ? { ...own, via: grip.at } : own;
}

function command(scene: Scene, front: Piece, { slash, from, via, to }: Held): DrawSlash {
  const bent = via === undefined ? {} : { via: anchorInside(scene.work, 'front', via) };
  const end = endAnchor(scene.work, front, from.part, to);
  return { do: 'draw-slash', slash, from: anchorAt(from), ...bent, to: end };
}

/** The middle of the longest stretch of an edge on which no slash begins yet. */
function freeMiddle(front: Piece, { part, edge }: ReturnType<typeof slashEdges>[number]): Point {
  const taken = uncutSlashes(front).flatMap((drawn) => {
    const at = drawn.part === part ? edgePlace(front, drawn.from) : undefined;
    return at?.edge === edge ? [at.along] : [];
  });
  const cuts = [0, ...taken.sort((a, b) => a - b), chainLength(edge.chain)];
  let best = 0;
  let longest = -1;
  for (let i = 1; i < cuts.length; i++) {
    const free = cuts[i]! - cuts[i - 1]!;
    if (free > longest + 1e-6) [longest, best] = [free, cuts[i - 1]! + free / 2];
  }
  return pointAtLength(edge.chain, best);
}

/** The handles of a line that is drawn: its start, its end where it is in no dart's tip, and the place where it bends. */
function handlesOf(front: Piece, { id, part, from, via, to }: Uncut): ToolTarget[] {
  const base = { piece: 'front', how: 'carry', dart: id } as const;
  const start = edgePlace(front, from);
  const atEnd = slashEnds(front, [part]).some((end) => distance(end.point, to) < 0.05);
  return [
    { ...base, id: `from:${id}`, kind: 'point', point: from, ...(start && { ref: start.edge.id }) },
    via
      ? { ...base, id: `via:${id}`, kind: 'point', point: via, removable: true }
      : { ...base, id: `via:${id}`, kind: 'add', point: lerp(from, to, 0.55) },
    ...(atEnd ? [] : [{ ...base, id: `to:${id}`, kind: 'point' as const, point: to }]),
  ];
}

/** On the circle round the bust point, where the point is near to it. */
function onCircle(scene: Scene, front: Piece, point: Point): Point {
  const bust = nearestOf(slashEnds(front), point, Infinity)?.point;
  const radius = circleOf(scene);
  const off = bust ? distance(bust, point) : 0;
  if (!bust || off === 0 || Math.abs(off - radius) > scene.reach) return point;
  return add(bust, scale(sub(point, bust), radius / off));
}

/** By how much the first part of a line that is bent differs from parallel to another bent one, radians. */
function offParallel(front: Piece, { slash, from, via }: Held): Reading[] {
  const other = uncutSlashes(front).find((one) => one.id !== slash && one.via);
  if (!via || !other?.via) return [];
  const value = Math.abs(angleBetween(sub(via, from.point), sub(other.via, other.from)));
  return [{ id: 'off-parallel', unit: 'rad', value, piece: 'front', from: lerp(from.point, via, 0.5) }];
}

function pull(scene: Scene, grip: Grip, point: Point): Point {
  const front = frontOf(scene.work);
  if (!front) return point;
  const [head] = grip.target.split(':');
  if (head === 'from' || head === 'end') {
    const near = edgePlace(front, point);
    return near && (head === 'from' || near.off <= scene.reach) ? near.point : point;
  }
  if (head === 'via') return onCircle(scene, front, point);
  return nearestOf(slashEnds(front), point, scene.reach)?.point ?? point;
}

/** Draws a slash line: pulled from an edge to the bust point (or the other way), then moved by its handles until it is cut. */
export const drawSlash: ToolSpec = {
  id: 'draw-slash',
  options: (scene) => {
    const front = frontOf(scene.work);
    const bent = front && uncutSlashes(front).some(({ via }) => via);
    return bent ? [{ id: 'circle', kind: 'length', value: circleOf(scene) }] : [];
  },
  targets: ({ work }) => {
    const front = frontOf(work);
    if (!front || !work.opened) return [];
    return [
      ...slashEdges(front).map((one): ToolTarget => ({
        id: `start:${one.edge.id}`,
        kind: 'edge',
        point: freeMiddle(front, one),
        piece: 'front',
        how: 'carry',
        ref: one.edge.id,
        anywhere: true,
      })),
      ...slashEnds(front).map(({ id, point, landmark, dart }): ToolTarget => ({
        id,
        kind: landmark === undefined ? 'tip' : 'landmark',
        point,
        piece: 'front',
        how: 'carry',
        ...(landmark !== undefined && { ref: landmark }),
        ...(dart !== undefined && { dart }),
      })),
      ...uncutSlashes(front).flatMap((drawn) => handlesOf(front, drawn)),
    ];
  },
  press: ({ work, reach }, point) => {
    const front = frontOf(work);
    const near = front && work.opened && edgePlace(front, point);
    return near && near.off <= reach ? { target: 'start', how: 'carry' } : undefined;
  },
  pull,
  // Steps seldom end in a point: the nearest of them is in it. The next step is longer, and leads out again.
  nudge: (scene, grip, by) =>
    pull({ ...scene, reach: Math.min(NEAREST_STEP * distance(by, ORIGIN), NEAREST) }, grip, add(grip.at, by)),
  propose: (scene, grip) => {
    const front = frontOf(scene.work);
    const held = front && heldBy(scene, front, grip);
    if (!front || !held || distance(grip.from, grip.at) < ON) return undefined;
    if (distance(held.from.point, held.to) < 1) return undefined;
    return { command: command(scene, front, held) };
  },
  remove: (scene, target) => {
    const front = frontOf(scene.work);
    const drawn = front && uncutSlashes(front).find(({ id, via }) => via && target === `via:${id}`);
    const from = drawn && edgePlace(front, drawn.from);
    return from && command(scene, front, { slash: drawn.id, from, to: drawn.to });
  },
  guide: (scene, grip) => {
    const front = frontOf(scene.work);
    if (!front || !grip?.target.startsWith('via:')) return undefined;
    const bust = nearestOf(slashEnds(front), grip.at, Infinity)?.point;
    return bust && { centre: bust, radius: circleOf(scene), piece: 'front' };
  },
  readings: (scene, _work, grip) => {
    const front = frontOf(scene.work);
    const held = front && grip && heldBy(scene, front, grip);
    if (!held) return [];
    const [head] = grip.target.split(':');
    const away = head === 'via' ? held.via! : held.to;
    const bust = nearestOf(slashEnds(front), away, Infinity);
    const value = bust ? distance(bust.point, away) : 0;
    const off: Reading[] =
      bust && value > 0.05
        ? [{ id: 'from-bust', unit: 'mm', value, piece: 'front', from: bust.point, to: away }]
        : [];
    return [
      ...(head === 'via' || head === 'to' ? [] : placeReadings('front', held.from)),
      ...off,
      ...offParallel(front, held),
    ];
  },
};
