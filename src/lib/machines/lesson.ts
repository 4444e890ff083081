import { assign, type ActorRefFrom, type SnapshotFrom } from 'xstate';
import type { Mark, StepContext, StepRule } from '../grading/types.ts';
import { add, historyOf, redo, resetStep, undo, type Edit, type History } from '../recipe/history.ts';
import { idsOf, replayByStep } from '../recipe/replay.ts';
import type { Command } from '../recipe/types.ts';
import {
  areSame,
  attemptOf,
  stepOf,
  type LessonContext,
  type LessonEvent,
  type LessonInput,
} from './lesson-context.ts';
import { setup } from './machine.ts';

/** Marks a step: `gradeStep`. It is handed in so that a page can fetch the checks when the first mark is asked for. */
export type Grade<Step = StepRule> = (step: Step, context: StepContext) => Mark;

/**
 * The lesson's states: opening, working (trying, marked), watching the worked solution, finished; a test is worked and handed in.
 * Pure: keeping is the caller's.
 */
export function lessonMachine<Step extends { readonly id: string }>(
  lesson: { readonly id: string; readonly given?: readonly Step[]; readonly steps: readonly Step[] },
  grade: Grade<Step>,
) {
  const all = idsOf(lesson);
  const ids = lesson.steps.map((step) => step.id);
  const given = new Set(lesson.given?.map((step) => step.id));
  const isGiven = ({ step }: Command): boolean => step !== undefined && given.has(step);
  const stepAt = (id: string): Step | undefined => lesson.steps.find((step) => step.id === id);
  const first = ids[0] ?? '';

  function mark(context: LessonContext, id: string): Readonly<Record<string, Mark>> {
    const rule = stepAt(id);
    const replayed = context.steps.get(id);
    if (!rule || !replayed) return {};
    return {
      [id]: grade(rule, { ...replayed, fabric: context.base.fabric, attempt: attemptOf(context) }),
    };
  }

  const lyingAt = ({ steps }: LessonContext, id: string) => steps.get(id)?.commands ?? [];

  function laid(context: LessonContext): LessonContext {
    const steps = replayByStep(attemptOf(context), all);
    return { ...context, steps, unfollowed: [...steps.values()].flatMap((step) => step.unfollowed) };
  }

  /** Marks again what lies as it was checked: undo and redo bring a step's mark back. */
  function marked(context: LessonContext): LessonContext {
    const again = ids.filter((id) => areSame(context.checked[id], lyingAt(context, id)));
    return { ...context, marks: Object.assign({}, ...again.map((id) => mark(context, id))) };
  }

  const replayed = (context: LessonContext): LessonContext => marked(laid(context));

  /** The step being worked on is marked, and lies as it was checked. */
  function checked(context: LessonContext): Pick<LessonContext, 'marks' | 'checked'> {
    const { step } = context;
    const marks = { ...context.marks, ...mark(context, step) };
    const lying = lyingAt(context, step);
    const known = areSame(context.checked[step], lying);
    return { marks, checked: known ? context.checked : { ...context.checked, [step]: lying } };
  }

  function opened(input: LessonInput): LessonContext {
    const { commands, ...base } = input.attempt;
    const touched = commands.map((command) => ids.indexOf(command.step ?? first));
    const step =
      input.step !== undefined && ids.includes(input.step)
        ? input.step
        : (ids[Math.max(0, ...touched)] ?? first);
    const reached = Math.max(0, ids.indexOf(step), ...touched);
    const table = laid({
      history: historyOf(commands, isGiven),
      base,
      step,
      reached,
      flagged: input.flagged ?? [],
      hints: input.hints ?? {},
      demonstrationSeen: input.demonstrationSeen ?? false,
      test: input.test ?? false,
      steps: new Map(),
      checked: {},
      marks: {},
      unfollowed: [],
    });
    const before = input.test ? [] : (input.checked ?? ids.slice(0, reached));
    return marked({
      ...table,
      checked: Object.fromEntries(before.map((id) => [id, lyingAt(table, id)])),
    });
  }

  /** Goes where the last edit was made, so that nothing changes out of sight. */
  function atEdit(context: LessonContext, history: History, edit: Edit | undefined): LessonContext {
    const id = stepOf(edit);
    const step = id !== undefined && ids.includes(id) ? id : context.step;
    return replayed({ ...context, history, step });
  }

  function onwards(context: LessonContext): Partial<LessonContext> {
    const next = Math.min(ids.indexOf(context.step) + 1, ids.length - 1);
    return { step: ids[next] ?? context.step, reached: Math.max(context.reached, next) };
  }

  const without = (list: readonly string[], id: string) => list.filter((one) => one !== id);
  const isLast = (context: LessonContext) => context.step === ids.at(-1);
  const accepted = (context: LessonContext) => context.marks[context.step]?.verdict === 'accepted';

  return setup({
    types: {
      context: {} as LessonContext,
      events: {} as LessonEvent,
      input: {} as LessonInput,
    },
    guards: {
      seenBefore: ({ context }) => context.demonstrationSeen || context.test,
      learning: ({ context }) => !context.test,
      testing: ({ context }) => context.test,
      testGoesOn: ({ context }) => context.test && !isLast(context),
      canUndo: ({ context }) => context.history.done.length > 0,
      canRedo: ({ context }) => context.history.undone.length > 0,
      hasCommands: ({ context }) => context.history.commands.some((command) => command.step === context.step),
      reachable: ({ context, event }) => {
        const index = event.type === 'step.go' ? ids.indexOf(event.step) : -1;
        return index >= 0 && index <= context.reached;
      },
      accepted: ({ context }) => accepted(context),
      lastAccepted: ({ context }) => accepted(context) && isLast(context),
      canLeave: ({ context }) => !context.test && !isLast(context),
      marked: ({ context }) => context.marks[context.step] !== undefined,
    },
    actions: {
      seen: assign({ demonstrationSeen: true }),
      add: assign(({ context, event }) =>
        event.type === 'command.add'
          ? replayed({ ...context, history: add(context.history, { ...event.command, step: context.step }) })
          : {},
      ),
      undo: assign(({ context }) => atEdit(context, undo(context.history), context.history.done.at(-1))),
      redo: assign(({ context }) => atEdit(context, redo(context.history), context.history.undone.at(-1))),
      reset: assign(({ context }) =>
        replayed({ ...context, history: resetStep(context.history, context.step) }),
      ),
      check: assign(({ context }) => {
        const now = checked(context);
        const fine = now.marks[context.step]?.verdict === 'accepted';
        return { ...now, flagged: fine ? without(context.flagged, context.step) : context.flagged };
      }),
      go: assign(({ event }) => (event.type === 'step.go' ? { step: event.step } : {})),
      next: assign(({ context }) => onwards(context)),
      // A flagged step is marked as it is left, so that the list shows how it stands.
      flag: assign(({ context }) => ({
        ...checked(context),
        flagged: [...without(context.flagged, context.step), context.step],
      })),
      hint: assign(({ context }) => ({
        hints: { ...context.hints, [context.step]: (context.hints[context.step] ?? 0) + 1 },
      })),
      helped: assign(({ context }) => ({ hints: { ...context.hints, [context.step]: 1 } })),
      fabric: assign(({ context, event }) =>
        event.type === 'fabric.set'
          ? replayed({
              ...context,
              base: { ...context.base, fabric: event.fabric },
              // For another cloth the step being worked on waits for its check.
              checked: Object.fromEntries(
                Object.entries(context.checked).filter(([id]) => id !== context.step),
              ),
            })
          : {},
      ),
      open: assign(({ event }) =>
        event.type === 'attempt.open' ? opened({ attempt: event.attempt, demonstrationSeen: true }) : {},
      ),
      markAll: assign(({ context }) => ({
        marks: Object.assign({}, ...ids.map((id) => mark(context, id))),
        reached: ids.length - 1,
      })),
      again: assign(({ context, event }) => {
        const commands = context.history.commands.filter(isGiven);
        const block = (event.type === 'test.again' && event.block) || context.base.block;
        return opened({ attempt: { ...context.base, block, commands }, test: true });
      }),
    },
  }).createMachine({
    id: lesson.id,
    context: ({ input }) => opened(input),
    initial: 'opening',
    on: {
      'attempt.open': { guard: 'learning', target: '.working', actions: 'open' },
    },
    states: {
      opening: {
        always: { guard: 'seenBefore', target: 'working' },
        on: {
          'lesson.start': { target: 'working', actions: 'seen' },
          'solution.show': { target: 'watching', actions: 'seen' },
        },
      },
      working: {
        initial: 'entering',
        on: {
          'command.add': { target: '.trying', actions: 'add' },
          'command.undo': { guard: 'canUndo', target: '.entering', actions: 'undo' },
          'command.redo': { guard: 'canRedo', target: '.entering', actions: 'redo' },
          'step.reset': { guard: 'hasCommands', target: '.entering', actions: 'reset' },
          'fabric.set': { target: '.trying', actions: 'fabric' },
          'step.check': { guard: 'learning', target: '.marked', actions: 'check' },
          'step.go': { guard: 'reachable', target: '.entering', actions: 'go' },
          'step.leaveFlagged': { guard: 'canLeave', target: '.entering', actions: ['flag', 'next'] },
          'step.next': { guard: 'testGoesOn', target: '.entering', actions: 'next' },
          'hint.next': { guard: 'learning', actions: 'hint' },
          'solution.show': { guard: 'learning', target: 'watching' },
          'text.read': { guard: 'testing', actions: 'helped' },
          'test.handIn': { guard: 'testing', target: 'handedIn', actions: 'markAll' },
        },
        states: {
          entering: { always: [{ guard: 'marked', target: 'marked' }, { target: 'trying' }] },
          trying: {},
          marked: {
            on: {
              'step.next': [
                { guard: 'lastAccepted', target: '#finished' },
                { guard: 'accepted', target: 'entering', actions: 'next' },
              ],
            },
          },
        },
      },
      // The learner's work stays as it is while the solution plays over it.
      watching: { on: { 'solution.stop': 'working' } },
      // The marks of all steps are read; the table can only be looked at.
      handedIn: {
        on: {
          'step.go': { guard: 'reachable', actions: 'go' },
          'test.again': { target: 'working', actions: 'again' },
        },
      },
      finished: {
        id: 'finished',
        on: {
          'step.go': { guard: 'reachable', target: 'working', actions: 'go' },
          'solution.show': 'watching',
        },
      },
    },
  });
}

export type LessonMachine = ReturnType<typeof lessonMachine>;
export type LessonActor = ActorRefFrom<LessonMachine>;
export type LessonSnapshot = SnapshotFrom<LessonMachine>;
