import { createActor } from 'xstate';
import { add, scale } from '../../src/lib/geometry/point.ts';
import type { Point } from '../../src/lib/geometry/types.ts';
import type { Options, OptionValue } from '../../src/lib/machines/scene.ts';
import type { Over, ToolOption, ToolTarget } from '../../src/lib/machines/tool-spec.ts';
import type { ToolActor } from '../../src/lib/machines/tool.ts';
import { TOOLS } from '../../src/lib/machines/tools/index.ts';
import { machineOf } from '../../src/lib/machines/tools/known.ts';
import { apply } from '../../src/lib/recipe/apply.ts';
import type { Command, CommandName, Fabric, Refusal, Work } from '../../src/lib/recipe/types.ts';

/** px for each mm on the pretended screen. */
const K = 2;

/** A hand at the table: drives a tool's machine with pointer and keys, and does what it commands. */
export class Hand {
  readonly commands: Command[] = [];
  readonly refused: Refusal[] = [];
  work: Work;
  fabric: Fabric;
  #actor!: ToolActor;
  #tool!: CommandName;

  constructor(work: Work, fabric: Fabric = 'knit') {
    this.work = work;
    this.fabric = fabric;
  }

  take(tool: CommandName, options: Options = {}): this {
    this.#actor?.stop();
    this.#tool = tool;
    const input = { work: this.work, fabric: this.fabric, options, reach: 5 };
    const actor = createActor(machineOf(TOOLS[tool]), { input });
    actor.on('command', ({ command }) => this.#do(command));
    actor.on('refused', ({ refused }) => this.refused.push(refused));
    this.#actor = actor.start();
    return this;
  }

  #do(command: Command): void {
    const applied = apply(this.work, command);
    if ('refused' in applied) throw new Error(`${command.do} refused: ${JSON.stringify(applied.refused)}`);
    this.commands.push(command);
    this.work = applied.work;
    this.#actor.send({ type: 'scene.set', work: this.work, fabric: this.fabric });
  }

  /** The table as it lies after something was taken back. */
  backTo(work: Work): this {
    this.work = work;
    this.#actor.send({ type: 'scene.set', work, fabric: this.fabric });
    return this;
  }

  /** The last mark that is in no command yet is taken back. */
  markBack(): this {
    this.#actor.send({ type: 'mark.back' });
    return this;
  }

  /** The work after a command that was typed, not made by hand. */
  given(command: Command): Work {
    const applied = apply(this.work, command);
    if ('refused' in applied) throw new Error(`${command.do} refused: ${JSON.stringify(applied.refused)}`);
    return applied.work;
  }

  get tool(): CommandName {
    return this.#tool;
  }
  get state(): string {
    return String(this.#actor.getSnapshot().value);
  }
  get context() {
    return this.#actor.getSnapshot().context;
  }
  get targets(): readonly ToolTarget[] {
    return TOOLS[this.#tool].targets(this.context.scene);
  }
  get options(): readonly ToolOption[] {
    return TOOLS[this.#tool].options?.(this.context.scene) ?? [];
  }
  target(id: string): ToolTarget {
    const found = this.targets.find((one) => one.id === id);
    if (!found) throw new Error(`no target ${id} among ${this.targets.map((one) => one.id).join(', ')}`);
    return found;
  }

  down(point: Point, target?: string, over: Over = { piece: 'front' }): this {
    const which = target === undefined ? {} : { target };
    this.#actor.send({ type: 'pointer.down', point, screen: scale(point, K), over, ...which });
    return this;
  }
  /** To a point, perhaps through places that came between two pictures. */
  move(point: Point, via: readonly Point[] = []): this {
    this.#actor.send({ type: 'pointer.move', point, screen: scale(point, K), via });
    return this;
  }
  /** What is held is led to a point, and lags behind the hand. */
  lead(point: Point, hand: Point): this {
    this.#actor.send({ type: 'pointer.move', point, hand, screen: scale(hand, K) });
    return this;
  }
  up(): this {
    this.#actor.send({ type: 'pointer.up' });
    return this;
  }
  cancel(): this {
    this.#actor.send({ type: 'pointer.cancel' });
    return this;
  }
  escape(): this {
    this.#actor.send({ type: 'key.escape' });
    return this;
  }
  /** Pulls a target to a point, by way of the middle. */
  drag(id: string, to: Point): this {
    const { point } = this.target(id);
    return this.down(point, id)
      .move(scale(add(point, to), 0.5))
      .move(to)
      .up();
  }
  /** Enter on a target. */
  pick(id: string): this {
    this.#actor.send({ type: 'target.pick', target: id });
    return this;
  }
  nudge(id: string, x: number, y = 0, times = 1): this {
    for (let i = 0; i < times; i++) this.#actor.send({ type: 'target.nudge', target: id, by: { x, y } });
    return this;
  }
  remove(id: string): this {
    this.#actor.send({ type: 'target.remove', target: id });
    return this;
  }
  act(id: string): this {
    this.#actor.send({ type: 'act.do', act: id });
    return this;
  }
  option(id: string, value: OptionValue): this {
    this.#actor.send({ type: 'option.set', id, value });
    return this;
  }
}
