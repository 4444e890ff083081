import { describe, expect, it } from 'vitest';
import { createActor } from 'xstate';
import { loadLesson } from '../../src/cli/load-lessons.ts';
import { gradeLesson, gradeStep } from '../../src/lib/grading/grade.ts';
import { lessonMachine, type Grade } from '../../src/lib/machines/lesson.ts';
import { attemptOf, type LessonEvent } from '../../src/lib/machines/lesson-context.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import type { Attempt, Command } from '../../src/lib/recipe/types.ts';
import { sampleAttempt } from '../recipe/sample.ts';

const lesson = loadLesson('slanted-seam')!;
const sample = sampleAttempt('F2', 'knit');
const empty: Attempt = { ...sample, commands: [] };
const of = (step: string): readonly Command[] => sample.commands.filter((command) => command.step === step);

/** A test that was begun; `marked` counts how often a step was marked. */
function begun() {
  let marked = 0;
  const grade: Grade = (rule, context) => {
    marked += 1;
    return gradeStep(rule, context);
  };
  const actor = createActor(lessonMachine(lesson, grade), { input: { attempt: empty, test: true } }).start();
  return {
    send: (...events: LessonEvent[]) => events.forEach((event) => actor.send(event)),
    now: () => actor.getSnapshot(),
    marked: () => marked,
  };
}

function work(test: ReturnType<typeof begun>, steps = lesson.steps.map(({ id }) => id)): void {
  for (const id of steps) {
    expect(test.now().context.step).toBe(id);
    for (const command of of(id)) test.send({ type: 'command.add', command });
    test.send({ type: 'step.next' });
  }
}

describe('a lesson worked as a test', () => {
  it('begins at once, on an empty table', () => {
    const { now } = begun();
    expect(now().matches({ working: 'trying' })).toBe(true);
    expect(now().context).toMatchObject({ step: lesson.steps[0]!.id, reached: 0, marks: {}, test: true });
  });

  it('goes on without a mark, and gives none before it is handed in', () => {
    const test = begun();
    work(test);
    // There is no step after the last one.
    expect(test.now().context.step).toBe(lesson.steps.at(-1)!.id);
    expect(test.now().matches('working')).toBe(true);
    expect(test.marked()).toBe(0);
  });

  it('has no marks, hints, solution or flags, and opens no file', () => {
    const test = begun();
    const before = test.now();
    test.send(
      { type: 'step.check' },
      { type: 'hint.next' },
      { type: 'solution.show' },
      { type: 'step.leaveFlagged' },
      { type: 'attempt.open', attempt: sample },
    );
    expect(test.now().context).toEqual(before.context);
    expect(test.now().value).toEqual(before.value);
    expect(test.marked()).toBe(0);
  });

  it('has the lesson’s own text as the one help, counted once a step, and a new test without it', () => {
    const test = begun();
    const [first] = lesson.steps;
    test.send({ type: 'text.read' }, { type: 'text.read' });
    expect(test.now().context.hints).toEqual({ [first!.id]: 1 });
    work(test);
    test.send({ type: 'test.handIn' });
    expect(test.now().context.hints).toEqual({ [first!.id]: 1 });
    test.send({ type: 'test.again' });
    expect(test.now().context.hints).toEqual({});
  });

  it('is marked as a whole when it is handed in, as the grader marks the attempt', () => {
    const test = begun();
    work(test);
    test.send({ type: 'test.handIn' });
    const { context } = test.now();
    expect(test.now().value).toBe('handedIn');
    expect(Object.values(context.marks)).toEqual(gradeLesson(lesson, attemptOf(context)));
    expect(Object.values(context.marks).map(({ verdict }) => verdict)).toEqual(
      lesson.steps.map(() => 'accepted'),
    );
  });

  it('handed in too early is marked as it is, and every step can be looked at', () => {
    const test = begun();
    work(test, ['read-the-block', 'open-out']);
    test.send({ type: 'test.handIn' });
    const verdicts = Object.values(test.now().context.marks).map(({ verdict }) => verdict);
    expect(verdicts).toEqual(lesson.steps.map((_, i) => (i < 2 ? 'accepted' : 'notReady')));
    test.send({ type: 'step.go', step: 'walk-the-seams' });
    expect(test.now().context.step).toBe('walk-the-seams');
  });

  it('cannot be changed once it was handed in; another one begins empty', () => {
    const test = begun();
    work(test, ['read-the-block']);
    test.send({ type: 'test.handIn' });
    const { context } = test.now();
    test.send(
      { type: 'command.add', command: of('open-out')[0]! },
      { type: 'command.undo' },
      { type: 'step.reset' },
      { type: 'attempt.open', attempt: sample },
      { type: 'test.handIn' },
    );
    expect(test.now().context).toEqual(context);
    test.send({ type: 'test.again' });
    expect(test.now().matches('working')).toBe(true);
    expect(test.now().context).toMatchObject({
      history: { commands: [] },
      marks: {},
      reached: 0,
      test: true,
    });
  });

  it('begins again on the block that it is given, or on the same', () => {
    const test = begun();
    work(test, ['read-the-block']);
    test.send({ type: 'test.handIn' }, { type: 'test.again' });
    expect(test.now().context.base.block).toEqual(sample.block);
    test.send({ type: 'test.handIn' }, { type: 'test.again', block: { figure: 'F4' } });
    const { context } = test.now();
    expect(context.base.block).toEqual({ figure: 'F4' });
    expect(context.steps.get('read-the-block')!.before.block).toEqual(startWork({ figure: 'F4' }).block);
  });

  it('is no way to hand a lesson in', () => {
    const actor = createActor(lessonMachine(lesson, gradeStep), {
      input: { attempt: sample, demonstrationSeen: true },
    }).start();
    actor.send({ type: 'test.handIn' });
    expect(actor.getSnapshot().matches('working')).toBe(true);
    actor.send({ type: 'test.again' });
    expect(actor.getSnapshot().context.history.commands).toHaveLength(sample.commands.length);
  });
});
