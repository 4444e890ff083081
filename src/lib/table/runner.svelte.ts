import { createActor } from 'xstate';
import type { Point } from '../geometry/types.ts';
import type { Options, Scene } from '../machines/scene.ts';
import type { Grip, ToolSpec } from '../machines/tool-spec.ts';
import { cameTo, following, type Held } from '../machines/holding.ts';
import type { ToolActor, ToolContext, ToolEvent } from '../machines/tool.ts';
import { machineOf, toolOf } from '../machines/tools/known.ts';
import type { Command, CommandName, Fabric, Refusal, Work } from '../recipe/types.ts';

/** Runs the machine of the tool in hand and shows its state to the table. */
export class ToolRunner {
  state = $state.raw<string>('idle');
  spec = $state.raw<ToolSpec>();
  // One by one, so that a move of the hand touches only what goes by the hand.
  scene = $state.raw<Scene>();
  grip = $state.raw<Grip>();
  preview = $state.raw<Work>();
  /** Id of the target that is held, and where pieces would lie. */
  held = $state.raw<string>();
  placed = $state.raw<Work['placed']>();
  /** Something is marked that is in no command yet. */
  unfinished = $state(false);
  #context: ToolContext | undefined;
  #actor: ToolActor | undefined;
  /** Where the hand has come to, which the machine was not told yet. */
  #moved: Held | undefined;
  /** Settings stay with a tool while the table is open. */
  #options: Partial<Record<CommandName, Options>> = {};

  /** Takes a tool in hand; gives what puts it down. */
  take(
    tool: CommandName,
    work: Work,
    fabric: Fabric,
    on: { command: (c: Command) => void; refused: (r: Refusal) => void },
    asked?: readonly string[],
  ): () => void {
    const spec = toolOf(tool);
    if (!spec) throw new Error(`the tool '${tool}' was not fetched`);
    const input = { work, fabric, options: this.#options[tool] ?? {}, reach: 6, asked };
    const actor = createActor(machineOf(spec), { input });
    this.#actor = actor;
    actor.subscribe((snapshot) => {
      this.state = String(snapshot.value);
      this.#show(snapshot.context);
      this.#options[tool] = snapshot.context.scene.options;
    });
    actor.on('command', ({ command }) => on.command(command));
    actor.on('refused', ({ refused }) => on.refused(refused));
    actor.start();
    this.state = 'idle';
    this.#show(actor.getSnapshot().context);
    this.spec = spec;
    return () => {
      actor.stop();
      this.#actor = undefined;
      this.#moved = undefined;
      this.spec = undefined;
      this.#show(undefined);
      this.state = 'idle';
    };
  }

  send(event: ToolEvent): void {
    // Moves come with every picture, and change no state: the machine is told of the last one, before whatever else happens.
    if (event.type === 'pointer.move' && this.#follow(event)) return;
    const held = this.#moved;
    this.#moved = undefined;
    if (held) this.#actor?.send({ type: 'held.moved', held });
    this.#actor?.send(event);
  }

  /** Takes what is held along with the pointer; false when nothing goes along with it. */
  #follow(event: { point: Point; hand?: Point; via?: readonly Point[] }): boolean {
    const { spec } = this;
    const context = this.#context;
    const held = spec && context && following(spec, this.state, context, event);
    if (held) this.#show({ ...context, ...(this.#moved = held) });
    return held !== undefined;
  }

  /** Whether a hand that pulls has come to where what it holds snaps to one place. Point in mm. */
  snapsAt(hand: Point): boolean {
    const { spec } = this;
    const context = this.#context;
    return spec !== undefined && context !== undefined && cameTo(spec, context, hand);
  }

  #show(context: ToolContext | undefined): void {
    this.#context = context;
    this.scene = context?.scene;
    this.grip = context?.grip;
    this.preview = context?.preview;
    this.held = context?.grip?.target;
    this.placed = context?.preview?.placed;
    this.unfinished = (context?.back.length ?? 0) > 0;
  }

  get busy(): boolean {
    return this.state !== 'idle';
  }
}

/** mm at full size that an arrow key moves: 1 mm at half scale, with Shift 10, with Alt a tenth. */
export function stepOf(event: { key: string; shiftKey: boolean; altKey: boolean }): Point | undefined {
  const step = event.shiftKey ? 20 : event.altKey ? 0.2 : 2;
  switch (event.key) {
    case 'ArrowLeft':
      return { x: -step, y: 0 };
    case 'ArrowRight':
      return { x: step, y: 0 };
    case 'ArrowUp':
      return { x: 0, y: -step };
    case 'ArrowDown':
      return { x: 0, y: step };
    default:
      return undefined;
  }
}
