import { add, distance, sub } from '../geometry/point.ts';
import type { Point } from '../geometry/types.ts';
import { apply } from '../recipe/apply.ts';
import type { Refusal, Work } from '../recipe/types.ts';
import type { Scene } from './scene.ts';
import type { Grip, Over, Proposal, ToolSpec, ToolTarget } from './tool-spec.ts';

/** What is held, and what letting go would do. */
export interface Held {
  readonly grip: Grip | undefined;
  readonly proposal: Proposal | undefined;
  /** The table as it would be after letting go, computed by `apply`: what is shown is what will be stored. */
  readonly preview: Work | undefined;
  readonly refused: Refusal | undefined;
}

/** What is held at a grip, and what letting go there would do. */
export function hold(spec: ToolSpec, scene: Scene, grip: Grip): Held {
  const proposal = spec.propose(scene, grip);
  if (!proposal || !('command' in proposal))
    return { grip, proposal, preview: undefined, refused: undefined };
  const applied = apply(scene.work, proposal.command);
  return 'work' in applied
    ? { grip, proposal, preview: applied.work, refused: undefined }
    : { grip, proposal, preview: undefined, refused: applied.refused };
}

/** What is held once it is pulled to a point; `via`: the way there, for a tool that follows it. mm. */
export function pulled(
  spec: ToolSpec,
  scene: Scene,
  grip: Grip,
  point: Point,
  via: readonly Point[] = [],
): Held {
  const held = { ...grip, at: spec.pull ? spec.pull(scene, grip, point) : point };
  if (!spec.trail) return hold(spec, scene, held);
  return hold(spec, scene, { ...held, trail: [...(grip.trail ?? [grip.from]), ...via, held.at] });
}

/** What a move of the pointer goes on from. */
interface Following {
  readonly scene: Scene;
  readonly grip: Grip | undefined;
  readonly down: { readonly point: Point } | undefined;
}

/** Closer than this is the same place, mm. */
const SAME = 1e-9;
/** A little to the side of a place, mm. */
const ASIDE = [
  { x: 0.01, y: 0 },
  { x: 0, y: 0.01 },
];

/** Whether a point snaps to one place, from wherever about: not to the nearest place of a line. */
function snaps({ pull }: ToolSpec, scene: Scene, grip: Grip, point: Point): boolean {
  if (!pull) return false;
  const at = pull(scene, grip, point);
  return ASIDE.every((aside) => distance(pull(scene, grip, add(point, aside)), at) < SAME);
}

/** Where a hand at a point brings what it has gripped. mm. */
const broughtBy = (grip: Grip, down: { readonly point: Point }, hand: Point): Point =>
  grip.under ? hand : add(grip.from, sub(hand, down.point));

/** Whether a hand that pulls has come to where the thing that it holds snaps to one place. Point in mm. */
export function cameTo(spec: ToolSpec, { scene, grip, down }: Following, hand: Point): boolean {
  return grip !== undefined && down !== undefined && snaps(spec, scene, grip, broughtBy(grip, down, hand));
}

/**
 * What is held after a move of the pointer in a state where it goes along with it; undefined in the others. Pure, so that a
 * view may follow the hand by itself and tell the machine (`held.moved`) only where it came to.
 */
export function following(
  spec: ToolSpec,
  state: string,
  { scene, grip, down }: Following,
  { point, hand, via }: { readonly point: Point; readonly hand?: Point; readonly via?: readonly Point[] },
): Held | undefined {
  if (grip && state === 'carrying') return pulled(spec, scene, grip, point, via);
  if (!grip || !down || state !== 'dragging') return undefined;
  // A hand that has come to where the thing would snap has brought it there, though it went by a part of the way.
  const there = hand && cameTo(spec, { scene, grip, down }, hand) ? hand : point;
  return pulled(spec, scene, grip, broughtBy(grip, down, there), via);
}

/** The targets of a tool, each once: a landmark, or a group, that lies on two parts of a piece is one thing to choose. */
export function targetsOf(spec: ToolSpec, scene: Scene): readonly ToolTarget[] {
  const seen = new Set<string>();
  return spec.targets(scene).filter(({ id }) => !seen.has(id) && seen.add(id));
}

/** Taking up a target; undefined where the tool has none of that id. */
export function gripOf(spec: ToolSpec, scene: Scene, id: string): Grip | undefined {
  const target = targetsOf(spec, scene).find((one) => one.id === id);
  if (!target) return undefined;
  const { point, how, piece, anywhere } = target;
  return { target: id, from: point, at: point, how, piece, ...(anywhere && { under: true }) };
}

/** What a press takes up: a target, or what the tool makes of the paper there. */
export function pressed(
  spec: ToolSpec,
  scene: Scene,
  event: { readonly point: Point; readonly target?: string; readonly over?: Over },
): Grip | undefined {
  if (event.target !== undefined) return gripOf(spec, scene, event.target);
  const press = spec.press?.(scene, event.point, event.over ?? {});
  return press && { ...press, from: event.point, at: event.point, ...event.over };
}
