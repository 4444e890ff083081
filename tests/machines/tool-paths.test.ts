import { describe, expect, it } from 'vitest';
import { initialTransition, transition, type SnapshotFrom } from 'xstate';
import { add } from '../../src/lib/geometry/point.ts';
import type { Options } from '../../src/lib/machines/scene.ts';
import { targetsOf } from '../../src/lib/machines/holding.ts';
import type { ToolEvent, ToolMachine } from '../../src/lib/machines/tool.ts';
import { TOOLS } from '../../src/lib/machines/tools/index.ts';
import { machineOf } from '../../src/lib/machines/tools/known.ts';
import { apply } from '../../src/lib/recipe/apply.ts';
import { replay } from '../../src/lib/recipe/replay.ts';
import type { Command, CommandName, Fabric, Work } from '../../src/lib/recipe/types.ts';
import { sampleAttempt } from '../recipe/sample.ts';
import { DART_TABLES } from './dart-tables.ts';
import { FINISH_TABLES } from './finish-tables.ts';

type Snapshot = SnapshotFrom<ToolMachine>;
interface Action {
  readonly type: string;
  readonly params?: { readonly event: { readonly type: string; readonly command?: Command } };
}
interface Path {
  readonly snapshot: Snapshot;
  readonly events: readonly ToolEvent[];
}

const sample = sampleAttempt('F2', 'woven');
const tableAt = (count: number): Work =>
  replay({ ...sample, commands: sample.commands.slice(0, count) }).work;
/** Where a tool goes on from what was set with it before. */
const MARKED: Readonly<Partial<Record<CommandName, Options>>> = { pivot: { mark: 'right/side 0.5' } };
/** Each tool on the table on which the sample first gives its command, and on the finished one. */
const cases = (Object.keys(TOOLS) as CommandName[]).flatMap((tool) => {
  const at = sample.commands.findIndex((command) => command.do === tool);
  const given = sample.commands[at];
  const copied = given !== undefined && 'piece' in given && given.piece.endsWith('@woven');
  const middle = sample.commands.findIndex(({ step }) => step === 'working-darts');
  const fabric: Fabric = copied ? 'woven' : 'knit';
  return [
    { tool, when: 'when it is wanted', work: tableAt(at < 0 ? middle : at), fabric },
    { tool, when: 'at the end', work: tableAt(Infinity), fabric: 'woven' as const },
    ...[FINISH_TABLES[tool], DART_TABLES[tool]].flatMap((work) =>
      work ? [{ tool, when: 'on a front of its own', work, fabric: 'knit' as const }] : [],
    ),
    ...[MARKED[tool]].flatMap((options) =>
      options ? [{ tool, when: 'once it is marked', work: DART_TABLES[tool]!, fabric, options }] : [],
    ),
  ].map((one) => ({ options: {}, ...one }));
});
/** What is read and written has its form, and nothing on the table to hold. */
const TYPED: readonly CommandName[] = ['read', 'label'];

/** What can be done with the first and the last target, and away from them. */
function eventsOn(tool: CommandName, { context: { scene } }: Snapshot): ToolEvent[] {
  const targets = targetsOf(TOOLS[tool], scene);
  const screen = { x: 0, y: 0 };
  const [piece] = scene.work.pieces;
  const over = { piece: piece!.id, part: piece!.parts[0]!.id };
  const events: ToolEvent[] = [
    { type: 'pointer.down', point: { x: -40, y: 20 }, screen, over },
    { type: 'pointer.up' },
    { type: 'pointer.cancel' },
    { type: 'key.escape' },
    { type: 'target.nudge', by: { x: 2, y: -1 } },
  ];
  for (const by of [1, 30])
    events.push({ type: 'pointer.move', point: { x: by, y: by }, screen: { x: 2 * by, y: 2 * by } });
  for (const { id, point } of new Set([targets[0], targets.at(-1)].flatMap((one) => one ?? []))) {
    events.push(
      { type: 'pointer.down', target: id, point, screen },
      { type: 'pointer.move', point: add(point, { x: 9, y: 4 }), screen: { x: 18, y: 8 } },
      { type: 'target.pick', target: id },
      { type: 'target.nudge', target: id, by: { x: 2, y: 1 } },
      { type: 'target.remove', target: id },
    );
  }
  for (const { id } of TOOLS[tool].acts?.(scene).slice(0, 1) ?? []) events.push({ type: 'act.do', act: id });
  return events;
}

/** Where one may get by any events: each place once, by the shortest way. What is held counts, not where exactly. */
function paths(
  machine: ToolMachine,
  tool: CommandName,
  start: Snapshot,
): { paths: Path[]; kinds: Set<string> } {
  const found: Path[] = [{ snapshot: start, events: [] }];
  const kinds = new Set<string>([String(start.value)]);
  const seen = new Set<string>([key(start)]);
  for (const { snapshot, events } of found)
    for (const event of eventsOn(tool, start)) {
      const [next] = transition(machine, snapshot, event);
      if (seen.has(key(next)) || found.length > 60) continue;
      seen.add(key(next));
      kinds.add(String(next.value));
      found.push({ snapshot: next, events: [...events, event] });
    }
  return { paths: found, kinds };
}

const key = ({ value, context: { grip, proposal, refused } }: Snapshot): string =>
  JSON.stringify([value, grip?.target, proposal && Object.keys(proposal), refused?.code]);

describe('every path through every tool', () => {
  const reached = new Set<string>();
  const commanding = new Set<CommandName>();

  it.each(cases)('$tool, $when', ({ tool, work, fabric, options }) => {
    const machine = machineOf(TOOLS[tool]);
    const [start] = initialTransition(machine, { work, fabric, options, reach: 5 });
    const all = paths(machine, tool, start);
    for (const kind of all.kinds) reached.add(kind);
    for (const { snapshot } of all.paths) {
      if (snapshot.value === 'idle') {
        expect(snapshot.context).toMatchObject({ grip: undefined, preview: undefined, refused: undefined });
      } else expect(snapshot.context.grip).toBeDefined();
      for (const event of eventsOn(tool, start)) {
        const [next, actions] = transition(machine, snapshot, event);
        const emitted = (actions as readonly Action[]).flatMap(({ type, params }) =>
          type === 'xstate.emit' ? [params!.event] : [],
        );
        if (emitted.some(({ type }) => type === 'command')) commanding.add(tool);
        // A gesture ends in one command or in none; letting go ends it, and leaves nothing.
        expect(emitted.length).toBeLessThanOrEqual(1);
        if (event.type === 'key.escape' || event.type === 'pointer.cancel') {
          expect(next.value).toBe('idle');
          expect(emitted).toEqual([]);
        }
        // The tool changes no work: it asks for a command, and one that was previewed can be followed.
        expect(next.context.scene.work).toBe(work);
        const { command } = emitted[0] ?? {};
        if (command && snapshot.context.preview !== undefined)
          expect(apply(work, command)).toHaveProperty('work');
      }
    }
  });

  it('leads into each of the four states, and to commands', () => {
    const silent = (Object.keys(TOOLS) as CommandName[]).filter((tool) => !commanding.has(tool));
    expect(silent).toEqual(TYPED);
    expect([...reached].sort()).toEqual(['carrying', 'dragging', 'idle', 'pointing']);
  });
});
