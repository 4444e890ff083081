import { assign, emit, type ActorRefFrom } from 'xstate';
import { add, distance } from '../geometry/point.ts';
import type { Point } from '../geometry/types.ts';
import type { Command, Refusal, Work } from '../recipe/types.ts';
import { following, gripOf, hold, pressed, pulled, type Held } from './holding.ts';
import { setup } from './machine.ts';
import type { Options, OptionValue, Scene } from './scene.ts';
import type { Over, ToolSpec } from './tool-spec.ts';

export type ToolEvent =
  | { type: 'pointer.down'; point: Point; screen: Point; target?: string; over?: Over; touch?: boolean }
  | {
      type: 'pointer.move';
      point: Point;
      screen: Point;
      /** Where the hand itself is, mm, if what it holds does not go all of its way. */
      hand?: Point;
      via?: readonly Point[];
      slow?: boolean;
    }
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
  | { type: 'reach.set'; reach: number }
  /** What was marked last, and is in no command yet, is taken back. */
  | { type: 'mark.back' };

/** `nothing`: a gesture came to its end without a command. */
export type ToolEmitted =
  { type: 'command'; command: Command } | { type: 'refused'; refused: Refusal } | { type: 'nothing' };

export interface ToolContext extends Held {
  readonly scene: Scene;
  /** The options before each mark that was set by hand since the table last changed, the newest last. */
  readonly back: readonly Options[];
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

const changed = (spec: ToolSpec, was: Scene, work: Work, fabric: Scene['fabric']): Scene => ({
  ...was,
  work,
  fabric,
  options: spec.stillChosen?.(was, work) ?? was.options,
});

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
      keepOptions: assign(({ context: { scene, back, proposal, refused } }) => {
        if (refused || !proposal || !('options' in proposal)) return {};
        const { options } = scene;
        const fresh = Object.entries(proposal.options).some(([id, value]) => options[id] !== value);
        return {
          scene: { ...scene, options: { ...options, ...proposal.options } },
          back: fresh ? [...back, options] : back,
        };
      }),
      markBack: assign(({ context: { scene, back } }) => ({
        scene: { ...scene, options: back.at(-1) ?? scene.options },
        back: back.slice(0, -1),
      })),
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
        event.type === 'scene.set'
          ? {
              scene: changed(spec, context.scene, event.work, event.fabric),
              back: event.work === context.scene.work ? context.back : [],
            }
          : {},
      ),
      setReach: assign(({ context, event }) =>
        event.type === 'reach.set' ? { scene: { ...context.scene, reach: event.reach } } : {},
      ),
    },
  }).createMachine({
    id: spec.id,
    context: ({ input }) => ({ scene: input, back: [], ...EMPTY }),
    initial: 'idle',
    on: {
      'scene.set': { target: '.idle', actions: 'setScene' },
      'reach.set': { actions: 'setReach' },
      'mark.back': { target: '.idle', actions: 'markBack' },
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
