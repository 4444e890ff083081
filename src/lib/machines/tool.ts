import { assign, emit, type ActorRefFrom } from 'xstate';
import { add, distance, sub } from '../geometry/point.ts';
import type { Chain, Point } from '../geometry/types.ts';
import { apply } from '../recipe/apply.ts';
import type { Command, CommandName, Refusal, Work } from '../recipe/types.ts';
import { setup } from './machine.ts';
import type { Options, OptionValue, Scene } from './scene.ts';

/** What kind of thing a target is; the table draws each kind in its own way. */
export type TargetKind =
  | 'landmark'
  | 'edge'
  | 'line'
  | 'point'
  | 'add'
  | 'notch'
  | 'tip'
  | 'scissors'
  | 'turn'
  | 'pin'
  | 'seam'
  | 'piece'
  | 'handle';

/** Something a tool can take hold of (`carry`) or choose (`tap`). Ids stay the same while the thing stays the same. */
export interface ToolTarget {
  readonly id: string;
  readonly kind: TargetKind;
  readonly point: Point;
  /** Piece on which it lies; the table shows it there. */
  readonly piece: string;
  readonly how: 'tap' | 'carry';
  /** Id of the edge, landmark, notch, dart or seam it stands for. */
  readonly ref?: string;
  readonly dart?: string;
  /** Place along what it lies on, mm. */
  readonly at?: number;
  readonly removable?: boolean;
  /** It already has what the tool gives (named, allowed, walked ...). */
  readonly done?: boolean;
}

/** What is held: where it was taken up and where it would come to lie, mm. */
export interface Grip {
  readonly target: string;
  readonly from: Point;
  readonly at: Point;
  readonly how: 'tap' | 'carry';
  /** Piece and part under the pointer when it was taken up. */
  readonly piece?: string;
  readonly part?: string;
  /** The way of the hand since then, of a tool that follows it, mm. */
  readonly trail?: readonly Point[];
}

/** What letting go would do: give a command, or only change a setting of the tool. */
export type Proposal = { readonly command: Command } | { readonly options: Options };

export interface ToolOption {
  readonly id: string;
  readonly kind: 'choice' | 'length' | 'percent';
  readonly value: OptionValue;
  readonly choices?: readonly string[];
}

/** A way to act at once, shown as a button. */
export interface Act {
  readonly id: string;
  readonly about?: string;
  readonly command: Command;
}

/** A live measure: a dimension between two points, an angle at `from`, or (without `to`) words at `from`. mm, radians. */
export interface Reading {
  readonly id: string;
  readonly unit: 'mm' | 'rad';
  readonly value: number;
  readonly piece: string;
  readonly from?: Point;
  readonly to?: Point;
  readonly dart?: string;
  /** For an angle: the second ray's end. */
  readonly other?: Point;
}

export interface Over {
  readonly piece?: string;
  readonly part?: string;
}

/** One tool, as data and pure functions; `toolMachine` gives it its states. */
export interface ToolSpec {
  readonly id: CommandName;
  /** The whole way of the hand counts, not only where it has come to. */
  readonly trail?: true;
  readonly targets: (scene: Scene) => readonly ToolTarget[];
  /** A press on the paper away from all targets: what is then held. */
  readonly press?: (
    scene: Scene,
    point: Point,
    over: Over,
  ) => { target: string; how: 'tap' | 'carry' } | undefined;
  /** Where the held thing comes to lie when it is pulled to `point` (snap, slide along a line). Same for pointer and keys. */
  readonly pull?: (scene: Scene, grip: Grip, point: Point) => Point;
  /** Where it comes to lie after a key asked for `by` mm; default: moved by it, then pulled. */
  readonly nudge?: (scene: Scene, grip: Grip, by: Point) => Point;
  readonly propose: (scene: Scene, grip: Grip) => Proposal | undefined;
  readonly remove?: (scene: Scene, target: string) => Command | undefined;
  readonly options?: (scene: Scene) => readonly ToolOption[];
  /** The options that still hold once the table has changed; all of them where this is left out. */
  readonly stillChosen?: (was: Scene, now: Work) => Options;
  readonly acts?: (scene: Scene) => readonly Act[];
  /** What the scissors have cut so far, and on which piece. */
  readonly cut?: (scene: Scene, grip: Grip) => { readonly chain: Chain; readonly piece: string } | undefined;
  readonly readings?: (scene: Scene, work: Work, grip?: Grip) => readonly Reading[];
  readonly guide?: (scene: Scene, grip: Grip | undefined) => Circle | undefined;
  /** The block as it is pinned and swung, and what is traced of it. */
  readonly tracing?: (scene: Scene, grip: Grip | undefined) => Tracing | undefined;
}

/** A block that is pinned to the paper, swung, and traced in two goes: what lies still is traced first. mm, radians. */
export interface Tracing {
  readonly piece: string;
  readonly pin: Point;
  /** By how much the block is swung, positive clockwise on screen. */
  readonly angle: number;
  /** What of the outline is traced before it is swung, and after; both as the block lay at first. */
  readonly first: Chain;
  readonly second: Chain;
  /** The second is on the paper too, and not only to come. */
  readonly done?: true;
}

/** A circle to put something on, mm. */
export interface Circle {
  readonly centre: Point;
  readonly radius: number;
  readonly piece: string;
}

export type ToolEvent =
  | { type: 'pointer.down'; point: Point; screen: Point; target?: string; over?: Over; touch?: boolean }
  | { type: 'pointer.move'; point: Point; screen: Point; via?: readonly Point[]; slow?: boolean }
  | { type: 'held.moved'; held: Held }
  | { type: 'pointer.up'; stayed?: boolean }
  | { type: 'pointer.cancel' }
  | { type: 'key.escape' }
  | { type: 'target.pick'; target: string }
  | { type: 'target.nudge'; by: Point; target?: string }
  | { type: 'target.remove'; target: string }
  | { type: 'act.do'; act: string }
  | { type: 'option.set'; id: string; value: OptionValue }
  | { type: 'scene.set'; work: Work; fabric: Scene['fabric'] }
  | { type: 'reach.set'; reach: number };

/** `nothing`: a gesture came to its end without a command. */
export type ToolEmitted =
  { type: 'command'; command: Command } | { type: 'refused'; refused: Refusal } | { type: 'nothing' };

export interface ToolContext {
  readonly scene: Scene;
  readonly grip: Grip | undefined;
  readonly proposal: Proposal | undefined;
  /** The table as it would be after letting go, computed by `apply`: what is shown is what will be stored. */
  readonly preview: Work | undefined;
  readonly refused: Refusal | undefined;
  /** Where the pointer went down: work mm and screen px. */
  readonly down:
    | {
        readonly point: Point;
        readonly screen: Point;
        readonly touch: boolean;
        /** It was carried already: this press puts it down. */
        readonly puts?: true;
      }
    | undefined;
}

/** Pixels a pointer may stray before a press becomes a drag. */
export const DRAG_THRESHOLD = 4;
export const TOUCH_THRESHOLD = 9;
/** The same when it has lasted too long for a tap: then a small way is a small correction. */
export const SLOW_THRESHOLD = 2;

const EMPTY = {
  grip: undefined,
  proposal: undefined,
  preview: undefined,
  refused: undefined,
  down: undefined,
} as const;

/** What letting go does. */
const COMMIT = ['say', 'keepOptions'] as const;

const said = (command: Command | undefined): ToolEmitted =>
  command ? { type: 'command', command } : { type: 'nothing' };

/** What is held, and what letting go would do. */
export type Held = Pick<ToolContext, 'grip' | 'proposal' | 'preview' | 'refused'>;

function hold(spec: ToolSpec, scene: Scene, grip: Grip): Held {
  const proposal = spec.propose(scene, grip);
  if (!proposal || !('command' in proposal))
    return { grip, proposal, preview: undefined, refused: undefined };
  const applied = apply(scene.work, proposal.command);
  return 'work' in applied
    ? { grip, proposal, preview: applied.work, refused: undefined }
    : { grip, proposal, preview: undefined, refused: applied.refused };
}

function pulled(spec: ToolSpec, scene: Scene, grip: Grip, point: Point, via: readonly Point[] = []): Held {
  const held = { ...grip, at: spec.pull ? spec.pull(scene, grip, point) : point };
  if (!spec.trail) return hold(spec, scene, held);
  return hold(spec, scene, { ...held, trail: [...(grip.trail ?? [grip.from]), ...via, held.at] });
}

/**
 * What is held after a move of the pointer in a state where it goes along with it; undefined in the others. Pure, so that a
 * view may follow the hand by itself and tell the machine (`held.moved`) only where it came to.
 */
export function following(
  spec: ToolSpec,
  state: string,
  { scene, grip, down }: ToolContext,
  { point, via }: { readonly point: Point; readonly via?: readonly Point[] },
): Held | undefined {
  if (grip && state === 'carrying') return pulled(spec, scene, grip, point, via);
  if (grip && down && state === 'dragging')
    return pulled(spec, scene, grip, add(grip.from, sub(point, down.point)), via);
  return undefined;
}

const changed = (spec: ToolSpec, was: Scene, work: Work, fabric: Scene['fabric']): Scene => ({
  ...was,
  work,
  fabric,
  options: spec.stillChosen?.(was, work) ?? was.options,
});

/** The targets of a tool, each once: a landmark, or a group, that lies on two parts of a piece is one thing to choose. */
export function targetsOf(spec: ToolSpec, scene: Scene): readonly ToolTarget[] {
  const seen = new Set<string>();
  return spec.targets(scene).filter(({ id }) => !seen.has(id) && seen.add(id));
}

function gripOf(spec: ToolSpec, scene: Scene, id: string): Grip | undefined {
  const target = targetsOf(spec, scene).find((one) => one.id === id);
  return target && { target: id, from: target.point, at: target.point, how: target.how, piece: target.piece };
}

function pressed(
  spec: ToolSpec,
  scene: Scene,
  event: Extract<ToolEvent, { type: 'pointer.down' }>,
): Grip | undefined {
  if (event.target !== undefined) return gripOf(spec, scene, event.target);
  const press = spec.press?.(scene, event.point, event.over ?? {});
  return press && { ...press, from: event.point, at: event.point, ...event.over };
}

/**
 * The states every tool shares: idle > pointing > dragging, and carrying for those who pick and then place. A gesture ends in
 * exactly one emitted command, or in none.
 */
export function toolMachine(spec: ToolSpec) {
  return setup({
    types: {
      context: {} as ToolContext,
      events: {} as ToolEvent,
      emitted: {} as ToolEmitted,
      input: {} as Scene,
    },
    guards: {
      hits: ({ context, event }) =>
        event.type === 'pointer.down' && pressed(spec, context.scene, event) !== undefined,
      far: ({ context, event }) =>
        event.type === 'pointer.move' &&
        context.down !== undefined &&
        distance(event.screen, context.down.screen) >
          (event.slow ? SLOW_THRESHOLD : context.down.touch ? TOUCH_THRESHOLD : DRAG_THRESHOLD),
      stayed: ({ context, event }) =>
        event.type === 'pointer.up' &&
        event.stayed === true &&
        context.grip?.how === 'carry' &&
        !context.down?.puts,
      heldIsTap: ({ context }) => context.grip?.how === 'tap',
      isTap: ({ context, event }) =>
        'target' in event &&
        event.target !== undefined &&
        gripOf(spec, context.scene, event.target)?.how === 'tap',
      isCarry: ({ context, event }) =>
        'target' in event &&
        event.target !== undefined &&
        gripOf(spec, context.scene, event.target)?.how === 'carry',
    },
    actions: {
      press: assign(({ context, event }) => {
        if (event.type !== 'pointer.down') return {};
        const grip = pressed(spec, context.scene, event);
        const down = { point: event.point, screen: event.screen, touch: event.touch ?? false };
        return grip ? { ...pulled(spec, context.scene, grip, grip.at), down } : {};
      }),
      pick: assign(({ context, event }) => {
        const grip =
          'target' in event && event.target !== undefined && gripOf(spec, context.scene, event.target);
        return grip ? pulled(spec, context.scene, grip, grip.at) : {};
      }),
      goBack: assign(({ context: { scene, grip } }) => (grip ? pulled(spec, scene, grip, grip.from) : {})),
      drag: assign(({ context, event }) =>
        event.type === 'pointer.move' ? { ...following(spec, 'dragging', context, event) } : {},
      ),
      follow: assign(({ context, event }) =>
        event.type === 'pointer.move' || event.type === 'pointer.down'
          ? { ...following(spec, 'carrying', context, event) }
          : {},
      ),
      moved: assign(({ event }) => (event.type === 'held.moved' ? event.held : {})),
      takeUpAt: assign(({ context, event }) =>
        event.type === 'pointer.down' && context.grip
          ? {
              grip: { ...context.grip, from: event.point },
              down: { point: event.point, screen: event.screen, touch: event.touch ?? false, puts: true },
            }
          : {},
      ),
      nudge: assign(({ context, event }) => {
        const { scene, grip } = context;
        if (event.type !== 'target.nudge' || !grip) return {};
        return spec.nudge
          ? hold(spec, scene, { ...grip, at: spec.nudge(scene, grip, event.by) })
          : pulled(spec, { ...scene, reach: 0 }, grip, add(grip.at, event.by));
      }),
      placeAtTarget: assign(({ context, event }) => {
        if (event.type !== 'target.pick' || !context.grip || event.target === context.grip.target) return {};
        const other = gripOf(spec, context.scene, event.target);
        return other ? pulled(spec, context.scene, context.grip, other.from) : {};
      }),
      say: emit(({ context: { proposal, refused } }): ToolEmitted => {
        if (refused) return { type: 'refused', refused };
        return said(proposal && 'command' in proposal ? proposal.command : undefined);
      }),
      keepOptions: assign(({ context: { scene, proposal, refused } }) =>
        !refused && proposal && 'options' in proposal
          ? { scene: { ...scene, options: { ...scene.options, ...proposal.options } } }
          : {},
      ),
      remove: emit(({ context, event }) =>
        said(event.type === 'target.remove' ? spec.remove?.(context.scene, event.target) : undefined),
      ),
      act: emit(({ context, event }) => {
        const acts = event.type === 'act.do' ? spec.acts?.(context.scene) : undefined;
        return said(acts?.find((one) => event.type === 'act.do' && one.id === event.act)?.command);
      }),
      letGo: assign(EMPTY),
      setOption: assign(({ context, event }) =>
        event.type === 'option.set'
          ? { scene: { ...context.scene, options: { ...context.scene.options, [event.id]: event.value } } }
          : {},
      ),
      setScene: assign(({ context, event }) =>
        event.type === 'scene.set' ? { scene: changed(spec, context.scene, event.work, event.fabric) } : {},
      ),
      setReach: assign(({ context, event }) =>
        event.type === 'reach.set' ? { scene: { ...context.scene, reach: event.reach } } : {},
      ),
    },
  }).createMachine({
    id: spec.id,
    context: ({ input }) => ({ scene: input, ...EMPTY }),
    initial: 'idle',
    on: {
      'scene.set': { target: '.idle', actions: 'setScene' },
      'reach.set': { actions: 'setReach' },
      'option.set': { target: '.idle', actions: 'setOption' },
    },
    states: {
      idle: {
        entry: 'letGo',
        on: {
          'pointer.down': { guard: 'hits', target: 'pointing', actions: 'press' },
          'target.pick': [
            { guard: 'isTap', target: 'idle', reenter: true, actions: ['pick', ...COMMIT] },
            { guard: 'isCarry', target: 'carrying', actions: 'pick' },
          ],
          'target.nudge': { guard: 'isCarry', target: 'carrying', actions: ['pick', 'nudge'] },
          'target.remove': { actions: 'remove' },
          'act.do': { actions: 'act' },
        },
      },
      pointing: {
        on: {
          'pointer.move': { guard: 'far', target: 'dragging', actions: 'drag' },
          'pointer.up': [{ guard: 'heldIsTap', target: 'idle', actions: COMMIT }, { target: 'carrying' }],
          'pointer.cancel': 'idle',
          'key.escape': 'idle',
        },
      },
      dragging: {
        on: {
          'pointer.move': { actions: 'drag' },
          'held.moved': { actions: 'moved' },
          'pointer.up': [
            { guard: 'stayed', target: 'carrying', actions: 'goBack' },
            { target: 'idle', actions: COMMIT },
          ],
          'pointer.cancel': 'idle',
          'key.escape': 'idle',
        },
      },
      carrying: {
        on: {
          'pointer.move': { actions: 'follow' },
          'held.moved': { actions: 'moved' },
          'pointer.down': { target: 'dragging', actions: ['follow', 'takeUpAt'] },
          'target.nudge': { actions: 'nudge' },
          'target.pick': { target: 'idle', actions: ['placeAtTarget', ...COMMIT] },
          'act.do': { target: 'idle', actions: 'act' },
          'key.escape': 'idle',
          'pointer.cancel': 'idle',
        },
      },
    },
  });
}

export type ToolMachine = ReturnType<typeof toolMachine>;
export type ToolActor = ActorRefFrom<ToolMachine>;
