import { beforeEach, describe, expect, it, vi } from 'vitest';
import { createActor } from 'xstate';
import { loadLesson } from '../../src/cli/load-lessons.ts';
import { gradeStep } from '../../src/lib/grading/grade.ts';
import type { Lesson } from '../../src/lib/lessons/types.ts';
import { lessonMachine } from '../../src/lib/machines/lesson.ts';
import { keptOf, type LessonEvent, type LessonInput } from '../../src/lib/machines/lesson-context.ts';
import { WorkRecord } from '../../src/lib/panels/work-record.ts';
import type { AtWork, Marked } from '../../src/lib/panels/recorder.ts';
import { sampleAttempt } from '../recipe/sample.ts';

const written: Marked[] = [];
const taken: number[] = [];
vi.mock('../../src/lib/panels/recorder.ts', () => ({
  recordMark: async (marked: Marked) => void written.push(marked),
  recordHelp: async (_: AtWork, hints: number) => void taken.push(hints),
}));

const whole = loadLesson('slanted-seam')!;
const lesson: Lesson = {
  ...whole,
  steps: whole.steps.filter(({ id }) => id === 'open-out' || id === 'style-line'),
};
const sample = sampleAttempt('F2', 'knit');
const right = sample.commands.find(({ step }) => step === 'open-out')!;
const fresh: LessonInput = { attempt: { ...sample, commands: [] }, demonstrationSeen: true };

/** A visit to the lesson; `check` marks the step and gives what was written down of it. */
function visit(input: LessonInput = fresh) {
  const record = new WorkRecord(lesson, async () => lesson);
  const actor = createActor(lessonMachine(lesson, gradeStep), { input }).start();
  record.opened(actor.getSnapshot());
  const send = (...events: LessonEvent[]): void => {
    for (const event of events) {
      record.sees(event, actor.getSnapshot());
      actor.send(event);
      if (event.type === 'attempt.open') record.opened(actor.getSnapshot(), true);
    }
  };
  const check = async (): Promise<readonly Marked[]> => {
    // Two at a time, the second would be given the module itself and not its stand-in.
    await record.written;
    written.length = 0;
    send({ type: 'step.check' });
    record.marked(actor.getSnapshot(), actor.getSnapshot().context.step);
    await record.written;
    return [...written];
  };
  const kept = (): LessonInput => JSON.parse(JSON.stringify(keptOf(actor.getSnapshot().context)));
  return { send, check, kept };
}

describe('what is written down of marks', () => {
  beforeEach(() => void (written.length = 0));

  it('a mark once, and again only when something changed or help was taken', async () => {
    const { send, check } = visit();
    expect((await check()).map(({ mark }) => mark.verdict)).toEqual(['notReady']);
    expect(await check()).toEqual([]);
    send({ type: 'hint.next' });
    expect((await check()).map(({ hints }) => hints)).toEqual([1]);
    // What is taken after the last mark is written down as it is taken: the step may be left without another.
    expect(taken).toEqual([1]);
    send({ type: 'command.add', command: right });
    expect((await check()).map(({ mark, old }) => [mark.verdict, old])).toEqual([['accepted', false]]);
  });

  it('nothing of old work that was right, however it comes to lie there again', async () => {
    const first = visit();
    first.send({ type: 'command.add', command: right });
    expect(await first.check()).toHaveLength(1);
    first.send({ type: 'step.reset' }, { type: 'command.undo' });
    expect(await first.check()).toEqual([]);
    first.send({ type: 'hint.next' });
    expect(await first.check()).toEqual([]);

    // Twelve days later.
    const later = visit(first.kept());
    expect(await later.check()).toEqual([]);
    later.send({ type: 'hint.next' });
    expect(await later.check()).toEqual([]);
    // Done anew it is practice, though the very same is done.
    later.send({ type: 'step.reset' }, { type: 'command.add', command: right });
    expect(await later.check()).toHaveLength(1);
  });

  it('a first mark of work that was kept without one', async () => {
    const first = visit();
    first.send({ type: 'command.add', command: right });
    expect(await visit(first.kept()).check()).toHaveLength(1);
  });

  it('of work from a file, that it is old', async () => {
    const { send, check } = visit();
    send({ type: 'attempt.open', attempt: { ...sample, commands: [right] } });
    expect((await check()).map(({ old }) => old)).toEqual([true]);
    send({ type: 'step.reset' }, { type: 'command.add', command: right });
    expect((await check()).map(({ old }) => old)).toEqual([false]);
  });
});
