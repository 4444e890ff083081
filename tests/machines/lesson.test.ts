import { describe, expect, it } from 'vitest';
import { createActor, getNextSnapshot, type SnapshotFrom } from 'xstate';
import { getShortestPaths } from 'xstate/graph';
import { loadLesson } from '../../src/cli/load-lessons.ts';
import { gradeLesson, gradeStep } from '../../src/lib/grading/grade.ts';
import type { Lesson } from '../../src/lib/lessons/types.ts';
import { lessonMachine } from '../../src/lib/machines/lesson.ts';
import {
  attemptOf,
  keptOf,
  type LessonContext,
  type LessonEvent,
  type LessonInput,
} from '../../src/lib/machines/lesson-context.ts';
import type { Attempt, Command } from '../../src/lib/recipe/types.ts';
import { sampleAttempt } from '../recipe/sample.ts';

const whole = loadLesson('slanted-seam')!;
const sample = sampleAttempt('F2', 'knit');
const fresh: Attempt = { ...sample, commands: [] };
const of = (step: string): readonly Command[] => sample.commands.filter((command) => command.step === step);

/** Two real steps: few enough to walk every path. */
const small: Lesson = {
  ...whole,
  steps: whole.steps.filter(({ id }) => id === 'open-out' || id === 'style-line'),
};
const right = of('open-out')[0]!;
const wrong: Command = { do: 'open-out', about: 'right/waist' };
const line = of('style-line')[0]!;

const begun = (lesson = whole, input: Partial<LessonInput> = {}) =>
  createActor(lessonMachine(lesson, gradeStep), {
    input: { attempt: fresh, demonstrationSeen: true, ...input },
  }).start();

describe('the lesson machine', () => {
  it('begins behind what is given: that is not undone, emptied, gone to or marked, and no attempt loses it', () => {
    const [first, second] = small.steps;
    const part: Lesson = { ...small, given: [first!], steps: [second!] };
    const commands = [right, line];
    const actor = begun(part, { attempt: { ...fresh, commands: [right] } });
    const context = () => actor.getSnapshot().context;
    expect(context().step).toBe('style-line');
    expect(context().steps.get('style-line')!.before.opened).toBeDefined();
    actor.send({ type: 'command.undo' });
    actor.send({ type: 'step.reset' });
    actor.send({ type: 'step.go', step: 'open-out' });
    expect(context().history.commands).toEqual([right]);
    expect(context().step).toBe('style-line');
    actor.send({ type: 'command.add', command: line });
    actor.send({ type: 'step.check' });
    expect(Object.keys(context().marks)).toEqual(['style-line']);
    expect(context().marks['style-line']!.verdict).toBe('accepted');
    expect(attemptOf(context()).commands.map(({ do: name }) => name)).toEqual(['open-out', 'draw-line']);
    actor.send({ type: 'command.undo' });
    expect(context().history.commands).toEqual([right]);
    actor.send({ type: 'command.undo' });
    expect(context().history.commands).toEqual([right]);

    // The same when it is kept and opened again, and marked as a whole.
    const again = begun(part, { attempt: { ...fresh, commands } });
    again.send({ type: 'command.undo' });
    again.send({ type: 'command.undo' });
    expect(again.getSnapshot().context.history.commands).toEqual([right]);
    expect(gradeLesson(part, { ...fresh, commands }).map(({ step, verdict }) => [step, verdict])).toEqual([
      ['style-line', 'accepted'],
    ]);
    // Without it nothing is right.
    expect(gradeLesson(part, { ...fresh, commands: [line] })[0]!.verdict).not.toBe('accepted');
  });

  it('opens with the demonstration, and skips it for those who saw it', () => {
    const actor = createActor(lessonMachine(small, gradeStep), { input: { attempt: fresh } }).start();
    expect(actor.getSnapshot().value).toBe('opening');
    actor.send({ type: 'lesson.start' });
    expect(actor.getSnapshot().matches('working')).toBe(true);
    expect(actor.getSnapshot().context.demonstrationSeen).toBe(true);
    expect(begun(small).getSnapshot().matches('working')).toBe(true);
  });

  it('goes on only when the step is accepted', () => {
    const actor = begun(small);
    const step = () => actor.getSnapshot().context.step;
    actor.send({ type: 'step.check' });
    actor.send({ type: 'step.next' });
    expect(step()).toBe('open-out');
    actor.send({ type: 'command.add', command: right });
    actor.send({ type: 'step.next' });
    expect(step()).toBe('open-out');
    actor.send({ type: 'step.check' });
    actor.send({ type: 'step.next' });
    expect(step()).toBe('style-line');
  });

  it('takes the whole sample from the first step to the end, and marks it as the grader does', () => {
    const actor = begun();
    for (const { id } of whole.steps) {
      expect(actor.getSnapshot().context.step).toBe(id);
      for (const command of of(id)) actor.send({ type: 'command.add', command });
      actor.send({ type: 'step.check' });
      actor.send({ type: 'step.next' });
    }
    expect(actor.getSnapshot().value).toBe('finished');
    // The solution may be watched then too.
    actor.send({ type: 'solution.show' });
    expect(actor.getSnapshot().value).toBe('watching');
    actor.send({ type: 'solution.stop' });
    expect(actor.getSnapshot().matches('working')).toBe(true);
    const { context } = actor.getSnapshot();
    expect(Object.values(context.marks)).toEqual(gradeLesson(whole, attemptOf(context)));
  });

  it('lets a step be left, flagged, and takes the flag off once it is accepted', () => {
    const actor = begun(small);
    actor.send({ type: 'step.leaveFlagged' });
    expect(actor.getSnapshot().context).toMatchObject({ step: 'style-line', flagged: ['open-out'] });
    expect(actor.getSnapshot().context.marks['open-out']?.verdict).toBe('notReady');
    actor.send({ type: 'step.go', step: 'open-out' });
    actor.send({ type: 'command.add', command: right });
    actor.send({ type: 'step.check' });
    expect(actor.getSnapshot().context.flagged).toEqual([]);
  });

  it('loses nothing by going back: a change before is replayed, and what no longer follows stays listed', () => {
    const actor = begun(small);
    const send = (...events: LessonEvent[]) => events.forEach((event) => actor.send(event));
    send({ type: 'command.add', command: right }, { type: 'step.check' }, { type: 'step.next' });
    send({ type: 'command.add', command: line }, { type: 'step.check' });
    expect(actor.getSnapshot().context.marks['style-line']?.verdict).toBe('accepted');
    send({ type: 'step.go', step: 'open-out' }, { type: 'step.reset' });
    const { context } = actor.getSnapshot();
    expect(context.history.commands).toEqual([{ ...line, step: 'style-line' }]);
    expect(context.unfollowed.map(({ command }) => command.do)).toEqual(['draw-line']);
    expect(context.marks['style-line']?.verdict).not.toBe('accepted');
    send({ type: 'command.add', command: right });
    expect(actor.getSnapshot().context.unfollowed).toEqual([]);
    expect(actor.getSnapshot().context.marks['style-line']?.verdict).toBe('accepted');
  });

  it('goes to the step of what is undone, so that nothing changes out of sight', () => {
    const actor = begun(small);
    actor.send({ type: 'command.add', command: right });
    actor.send({ type: 'step.check' });
    actor.send({ type: 'step.next' });
    actor.send({ type: 'command.undo' });
    expect(actor.getSnapshot().context).toMatchObject({ step: 'open-out', history: { commands: [] } });
    actor.send({ type: 'command.redo' });
    expect(actor.getSnapshot().context.history.commands).toHaveLength(1);
  });

  it('shows the solution over the work and changes nothing by it', () => {
    const actor = begun(small);
    actor.send({ type: 'command.add', command: wrong });
    const before = actor.getSnapshot().context;
    actor.send({ type: 'solution.show' });
    expect(actor.getSnapshot().value).toBe('watching');
    actor.send({ type: 'command.add', command: right });
    actor.send({ type: 'solution.stop' });
    expect(actor.getSnapshot().context).toEqual(before);
  });

  it('comes back from what was kept with the same table and the same marks, killed after any command', () => {
    const actor = begun();
    for (const { id } of whole.steps.slice(0, 9)) {
      for (const command of of(id)) {
        actor.send({ type: 'command.add', command });
        const { context } = actor.getSnapshot();
        const again = begun(whole, JSON.parse(JSON.stringify(keptOf(context)))).getSnapshot().context;
        expect(again.steps.get(id)!.after).toEqual(context.steps.get(id)!.after);
        expect(again.marks).toEqual(context.marks);
        expect([again.step, again.reached]).toEqual([context.step, context.reached]);
      }
      actor.send({ type: 'step.check' });
      actor.send({ type: 'step.next' });
    }
  });

  it('comes back to a step that was checked with its mark, and to one that was changed since without', () => {
    const actor = begun(small);
    const kept = (): LessonInput => JSON.parse(JSON.stringify(keptOf(actor.getSnapshot().context)));
    const marks = () => begun(small, kept()).getSnapshot();
    actor.send({ type: 'command.add', command: wrong });
    expect(marks().context.marks).toEqual({});
    expect(marks().matches({ working: 'trying' })).toBe(true);
    actor.send({ type: 'step.check' });
    expect(kept().checked).toEqual(['open-out']);
    expect(marks().context.marks).toEqual(actor.getSnapshot().context.marks);
    expect(marks().matches({ working: 'marked' })).toBe(true);
    actor.send({ type: 'command.add', command: right });
    expect(kept().checked).toEqual([]);
    expect(marks().context.marks).toEqual({});
    // A record of an earlier version does not say it: what was left behind was checked.
    const { checked: _, ...old } = kept();
    expect(begun(small, old).getSnapshot().context.marks).toEqual({});
    expect(Object.keys(begun(small, { ...old, step: 'style-line' }).getSnapshot().context.marks)).toEqual([
      'open-out',
    ]);
  });

  it('brings a mark back when what it was of lies on the table again: by undo, by redo, not by doing the same anew', () => {
    const actor = begun(small);
    const send = (...events: LessonEvent[]) => events.forEach((event) => actor.send(event));
    const verdict = () => actor.getSnapshot().context.marks['open-out']?.verdict;
    send({ type: 'command.add', command: right }, { type: 'step.check' });
    send({ type: 'command.add', command: wrong });
    expect(verdict()).toBeUndefined();
    send({ type: 'command.undo' });
    expect(verdict()).toBe('accepted');
    send({ type: 'step.next' }, { type: 'command.undo' });
    expect(actor.getSnapshot().context.step).toBe('open-out');
    expect(verdict()).toBeUndefined();
    send({ type: 'command.redo' });
    expect(verdict()).toBe('accepted');
    expect(actor.getSnapshot().matches({ working: 'marked' })).toBe(true);
    send({ type: 'step.reset' }, { type: 'command.add', command: right });
    expect(verdict()).toBeUndefined();
    send({ type: 'command.undo' }, { type: 'command.undo' });
    expect(verdict()).toBe('accepted');
  });

  it('opens an attempt from a file in place of what was there', () => {
    const actor = begun();
    actor.send({ type: 'attempt.open', attempt: sample });
    const { context } = actor.getSnapshot();
    expect(attemptOf(context)).toEqual(sample);
    expect(context.step).toBe('walk-the-seams');
    expect(context.marks['first-dart']?.verdict).toBe('accepted');
  });
});

describe('every path through a small lesson', () => {
  const machine = lessonMachine(small, gradeStep);
  const events: LessonEvent[] = [
    { type: 'lesson.start' },
    { type: 'command.add', command: right },
    { type: 'command.undo' },
    { type: 'command.redo' },
    { type: 'step.reset' },
    { type: 'step.check' },
    { type: 'step.next' },
    { type: 'step.leaveFlagged' },
    { type: 'step.go', step: 'open-out' },
    { type: 'step.go', step: 'style-line' },
    { type: 'command.add', command: line },
    { type: 'solution.show' },
    { type: 'solution.stop' },
  ];
  const told = ({ value, context }: { value: unknown; context: LessonContext }): string =>
    JSON.stringify([
      value,
      context.step,
      context.reached,
      context.flagged,
      context.history.commands.map((command) => `${command.step} ${command.do}`),
      context.history.undone.length,
      Object.values(context.marks).map(({ step, verdict }) => `${step} ${verdict}`),
    ]);
  const paths = getShortestPaths(machine, {
    input: { attempt: fresh },
    events: ({ context }) =>
      context.history.commands.length >= 2 ? events.filter(({ type }) => type !== 'command.add') : events,
    serializeState: (snapshot) => told(snapshot as SnapshotFrom<typeof machine>),
    limit: 20000,
  });

  it('reaches every state of the machine', () => {
    const values = new Set(paths.map(({ state }) => JSON.stringify(state.value)));
    expect(values).toEqual(
      new Set(['"opening"', '{"working":"trying"}', '{"working":"marked"}', '"watching"', '"finished"']),
    );
    expect(paths.length).toBeGreaterThan(60);
  });

  it('keeps its promises in every state that can be reached', () => {
    for (const { state } of paths) {
      const { context } = state;
      const ids = small.steps.map(({ id }) => id);
      expect(ids.indexOf(context.step)).toBeLessThanOrEqual(context.reached);
      // What is marked is the table as it is, never what it was.
      const fair = gradeLesson(small, attemptOf(context));
      for (const mark of Object.values(context.marks)) expect(fair).toContainEqual(mark);
      // A step counts as done, or is flagged, before the next one is reached.
      if (state.value === 'finished') expect(context.marks[ids[1]!]?.verdict).toBe('accepted');
    }
  });

  it('never loses a command except by undo, reset, and redo of a reset', () => {
    for (const { state } of paths)
      for (const event of events) {
        const count = state.context.history.commands.length;
        const next = getNextSnapshot(machine, state, event).context.history.commands.length;
        if (!['command.undo', 'command.redo', 'step.reset'].includes(event.type))
          expect(next).toBeGreaterThanOrEqual(count);
      }
  });
});
