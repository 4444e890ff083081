import { createActor } from 'xstate';
import { describe, expect, it } from 'vitest';
import { add, scale } from '../../src/lib/geometry/point.ts';
import { targetsOf } from '../../src/lib/machines/holding.ts';
import type { ToolEvent } from '../../src/lib/machines/tool.ts';
import { TOOLS } from '../../src/lib/machines/tools/index.ts';
import { machineOf } from '../../src/lib/machines/tools/known.ts';
import { replayByStep } from '../../src/lib/recipe/replay.ts';
import type { Command, CommandName, Refusal } from '../../src/lib/recipe/types.ts';
import { ToolRunner } from '../../src/lib/table/runner.svelte.ts';
import { sampleAttempt, STEPS } from '../recipe/sample.ts';

const steps = replayByStep(sampleAttempt('F5', 'knit'), STEPS);
/** Tools that carry something, each at a step where it has something to carry. */
const WHERE: readonly (readonly [CommandName, (typeof STEPS)[number]])[] = [
  ['read', 'read-the-block'],
  ['draw-line', 'notches'],
  ['slash', 'first-dart'],
  ['place', 'leftover'],
  ['grain', 'label-and-grain'],
];
const turnable = replayByStep(
  {
    ...sampleAttempt('F5', 'knit'),
    commands: sampleAttempt('F5', 'knit').commands.filter(({ do: what }) => what !== 'turn'),
  },
  STEPS.slice(0, 7),
).get('first-dart')!.after;

/** A runner and a machine of the same tool on the same table, each with what it gave. */
function pair(tool: CommandName, work = turnable) {
  const asked = { commands: [] as Command[], refused: [] as Refusal[] };
  const alone = { commands: [] as Command[], refused: [] as Refusal[] };
  const runner = new ToolRunner();
  runner.take(tool, work, 'knit', {
    command: (command) => asked.commands.push(command),
    refused: (refusal) => asked.refused.push(refusal),
  });
  const actor = createActor(machineOf(TOOLS[tool]), {
    input: { work, fabric: 'knit', options: {}, reach: 6 },
  });
  actor.on('command', ({ command }) => alone.commands.push(command));
  actor.on('refused', ({ refused }) => alone.refused.push(refused));
  actor.start();
  const send = (event: ToolEvent): void => {
    runner.send(event);
    actor.send(event);
    const { value, context } = actor.getSnapshot();
    expect(runner.state).toBe(String(value));
    expect(runner.grip).toEqual(context.grip);
    expect(runner.held).toBe(context.grip?.target);
    expect(runner.preview).toEqual(context.preview);
    expect(runner.placed).toEqual(context.preview?.placed);
    expect(runner.scene).toEqual(context.scene);
  };
  return { send, asked, alone, runner };
}
const at = (x: number, y: number) => ({ point: { x, y }, screen: scale({ x, y }, 2) });

describe('a tool that the table runs', () => {
  const cases = [
    ...WHERE.map(([tool, step]) => [tool, steps.get(step)!.before] as const),
    ['turn', turnable],
  ];
  it.each(cases as [CommandName, typeof turnable][])(
    '%s: shows and gives what its machine does alone, move by move',
    (tool, work) => {
      const targets = targetsOf(TOOLS[tool], { work, fabric: 'knit', options: {}, reach: 6 });
      const carried = targets.filter(({ how }) => how === 'carry').slice(0, 6);
      expect(carried.length).toBeGreaterThan(0);
      for (const { id, point } of carried)
        for (const end of ['pointer.up', 'pointer.cancel', 'key.escape'] as const) {
          const { send, asked, alone } = pair(tool, work);
          send({ type: 'pointer.down', ...at(point.x, point.y), target: id });
          for (let i = 1; i <= 9; i++) {
            const to = add(point, { x: 7 * i, y: (i % 3) * 5 - 4 });
            send({ type: 'pointer.move', ...at(to.x, to.y) });
          }
          send({ type: end });
          expect(asked).toEqual(alone);
          send({ type: 'pointer.move', ...at(point.x, point.y) });
        }
    },
  );

  it('goes along with a target that was picked, until a press puts it down', () => {
    const { send, asked, alone } = pair('draw-line', steps.get('notches')!.before);
    const { point } = steps.get('notches')!.before.lines.map(({ points }) => ({ point: points[1]! }))[0]!;
    send({ type: 'target.pick', target: 'point:1' });
    send({ type: 'pointer.move', ...at(point.x + 5, point.y) });
    send({ type: 'pointer.move', ...at(point.x + 9, point.y + 2) });
    send({ type: 'target.nudge', target: 'point:1', by: { x: 2, y: 0 } });
    send({ type: 'pointer.move', ...at(point.x + 12, point.y + 3) });
    send({ type: 'pointer.down', ...at(point.x + 12, point.y + 3) });
    send({ type: 'pointer.up' });
    expect(asked.commands).toHaveLength(1);
    expect(asked).toEqual(alone);
  });

  it('lets go of everything when it is put down in the middle of a drag', () => {
    const runner = new ToolRunner();
    const work = steps.get('notches')!.before;
    const given: Command[] = [];
    const stop = runner.take('draw-line', work, 'knit', {
      command: (command) => given.push(command),
      refused: () => {},
    });
    const point = work.lines[0]!.points[1]!;
    runner.send({ type: 'pointer.down', ...at(point.x, point.y), target: 'point:1' });
    runner.send({ type: 'pointer.move', ...at(point.x + 9, point.y) });
    runner.send({ type: 'pointer.move', ...at(point.x + 12, point.y) });
    expect(runner.preview).toBeDefined();
    stop();
    expect([runner.state, runner.grip, runner.preview, runner.held]).toEqual([
      'idle',
      undefined,
      undefined,
      undefined,
    ]);
    runner.send({ type: 'pointer.up' });
    expect(given).toEqual([]);
  });

  it('knows whether the hand has come to where what it pulls snaps to one place', () => {
    const { send, runner } = pair('turn');
    const grip = targetsOf(TOOLS.turn, runner.scene!).find(({ id }) => id === 'turn:right:freed')!.point;
    const goal = targetsOf(TOOLS.turn, runner.scene!).find(({ id }) => id === 'turn:right:rest')!.point;
    expect(runner.snapsAt(goal)).toBe(false);
    send({ type: 'pointer.down', ...at(grip.x, grip.y), target: 'turn:right:freed' });
    expect(runner.snapsAt(goal)).toBe(true);
    expect(runner.snapsAt(add(goal, { x: 1, y: -2 }))).toBe(true);
    expect(runner.snapsAt(add(grip, scale({ x: goal.x - grip.x, y: goal.y - grip.y }, 0.5)))).toBe(false);
  });
});
