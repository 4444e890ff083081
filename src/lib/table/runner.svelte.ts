import { createActor } from 'xstate';
import type { Point } from '../geometry/types.ts';
import type { Options } from '../machines/scene.ts';
import { type ToolActor, type ToolContext, type ToolEvent, type ToolSpec } from '../machines/tool.ts';
import { machineOf, toolOf } from '../machines/tools/known.ts';
import type { Command, CommandName, Fabric, Refusal, Work } from '../recipe/types.ts';

/** Runs the machine of the tool in hand and shows its state to the table. */
export class ToolRunner {
  state = $state.raw<string>('idle');
  context = $state.raw<ToolContext>();
  spec = $state.raw<ToolSpec>();
  #actor: ToolActor | undefined;
  /** Settings stay with a tool while the table is open. */
  #options: Partial<Record<CommandName, Options>> = {};

  /** Takes a tool in hand; gives what puts it down. */
  take(
    tool: CommandName,
    work: Work,
    fabric: Fabric,
    on: { command: (c: Command) => void; refused: (r: Refusal) => void },
  ): () => void {
    const spec = toolOf(tool);
    if (!spec) throw new Error(`the tool '${tool}' was not fetched`);
    const input = { work, fabric, options: this.#options[tool] ?? {}, reach: 6 };
    const actor = createActor(machineOf(spec), { input });
    this.#actor = actor;
    actor.subscribe((snapshot) => {
      this.state = String(snapshot.value);
      this.context = snapshot.context;
      this.#options[tool] = snapshot.context.scene.options;
    });
    actor.on('command', ({ command }) => on.command(command));
    actor.on('refused', ({ refused }) => on.refused(refused));
    actor.start();
    this.state = 'idle';
    this.context = actor.getSnapshot().context;
    this.spec = spec;
    return () => {
      actor.stop();
      this.#actor = undefined;
      this.spec = undefined;
      this.context = undefined;
      this.state = 'idle';
    };
  }

  send(event: ToolEvent): void {
    this.#actor?.send(event);
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
