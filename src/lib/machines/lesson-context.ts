import type { Mark } from '../grading/types.ts';
import type { Edit, History } from '../recipe/history.ts';
import type { StepReplay } from '../recipe/replay.ts';
import type { Attempt, BlockChoice, Command, Fabric, Unfollowed } from '../recipe/types.ts';

/** What was kept of an earlier visit, or a fresh attempt. */
export interface LessonInput {
  readonly attempt: Attempt;
  readonly step?: string;
  readonly flagged?: readonly string[];
  readonly hints?: Readonly<Record<string, number>>;
  readonly demonstrationSeen?: boolean;
  /** Steps that lie as they were last checked; undefined where that is not known: then those that were left behind. */
  readonly checked?: readonly string[];
  /** Worked as a test: in one go, without hints, worked solution and marks, until it is handed in. */
  readonly test?: boolean;
}

export type LessonEvent =
  | { type: 'lesson.start' }
  | { type: 'command.add'; command: Command }
  | { type: 'command.undo' }
  | { type: 'command.redo' }
  | { type: 'step.reset' }
  | { type: 'step.go'; step: string }
  | { type: 'step.check' }
  | { type: 'step.next' }
  | { type: 'step.leaveFlagged' }
  | { type: 'hint.next' }
  | { type: 'solution.show' }
  | { type: 'solution.stop' }
  | { type: 'fabric.set'; fabric: Fabric }
  /** In a test the lesson's own text is read: help, once a step. */
  | { type: 'text.read' }
  | { type: 'test.handIn' }
  /** `block` is what the new test begins on; left out, the one of the last. */
  | { type: 'test.again'; block?: BlockChoice }
  | { type: 'attempt.open'; attempt: Attempt };

export interface LessonContext {
  readonly history: History;
  /** The attempt without its commands, which live in the history. */
  readonly base: Omit<Attempt, 'commands'>;
  readonly step: string;
  /** Index of the furthest step that may be gone to. */
  readonly reached: number;
  readonly flagged: readonly string[];
  readonly hints: Readonly<Record<string, number>>;
  readonly demonstrationSeen: boolean;
  readonly test: boolean;
  /** The table before and after each step, replayed from the commands. */
  readonly steps: ReadonlyMap<string, StepReplay>;
  /** The commands of a step as they lay when it was last checked. */
  readonly checked: Readonly<Record<string, readonly Command[]>>;
  /** Marks by step, of the steps that lie as they were checked; always of the table as it is now. */
  readonly marks: Readonly<Record<string, Mark>>;
  /** Commands of any step that a change before them left without footing. */
  readonly unfollowed: readonly Unfollowed[];
}

export const attemptOf = (context: LessonContext): Attempt => ({
  ...context.base,
  commands: context.history.commands,
});

/** What is to be kept between visits: plain data for storage or a file. Marks are not in it; they follow from the attempt. */
export function keptOf(context: LessonContext): Required<Omit<LessonInput, 'test'>> {
  const { step, flagged, hints, demonstrationSeen } = context;
  const checked = Object.keys(context.marks);
  return { attempt: attemptOf(context), step, flagged, hints, demonstrationSeen, checked };
}

/** The step that an edit was made in. */
export function stepOf(edit: Edit | undefined): string | undefined {
  const splice = edit?.[0];
  return (splice?.added[0] ?? splice?.removed[0])?.step;
}

/** The very same commands, not only alike ones: what was done anew is another. */
export const areSame = (a: readonly Command[] | undefined, b: readonly Command[]): boolean =>
  a?.length === b.length && b.every((command, i) => command === a[i]);
