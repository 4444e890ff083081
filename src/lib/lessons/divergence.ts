import { gradeLesson, gradeStep, verdictOf } from '../grading/grade.ts';
import type { Finding, Mark } from '../grading/types.ts';
import { replayByStep } from '../recipe/replay.ts';
import type { Attempt, Command } from '../recipe/types.ts';
import type { Lesson } from './types.ts';
import { workedStep } from './worked/index.ts';

/** How much of a finding stems from the command at which the attempt left the right way. Numbers as in the finding. */
export interface Stemming {
  readonly step: string;
  readonly code: string;
  readonly about: Finding['about'];
  readonly measured: number;
  /** What would be measured had that command been the worked one and everything later the same. */
  readonly without: number;
}

export interface Divergence {
  /** Index, in the attempt's list, of the first command after which the worked result can no longer be reached. */
  readonly index: number;
  readonly command: Command;
  readonly step: string;
  /** The findings of this and later steps that have another number without it. */
  readonly stemming: readonly Stemming[];
}

const stepOf = (lesson: Lesson, commands: readonly Command[], index: number): number => {
  for (let i = index; i >= 0; i--) {
    const at = lesson.steps.findIndex((s) => s.id === commands[i]?.step);
    if (at >= 0) return at;
  }
  return 0;
};

/** The commands, and after them the worked ones from the table as it then lies, to the end of the step `at`. */
function workedOn(
  lesson: Lesson,
  attempt: Attempt,
  commands: readonly Command[],
  at: number,
): readonly Command[] {
  const ids = lesson.steps.map((s) => s.id);
  const step = lesson.steps[at]!;
  const table = replayByStep({ ...attempt, commands }, ids).get(step.id)!.after;
  return [...commands, ...workedStep(step, table, attempt.fabric)];
}

/** Whether the step can still be brought to be accepted from the table after these commands, by going on as it is worked. */
function canBeReached(lesson: Lesson, attempt: Attempt, commands: readonly Command[], at: number): boolean {
  const ids = lesson.steps.map((s) => s.id);
  const all = workedOn(lesson, attempt, commands, at);
  const whole = { ...attempt, commands: all };
  const replayed = replayByStep(whole, ids).get(ids[at]!)!;
  const { findings } = gradeStep(lesson.steps[at]!, { ...replayed, fabric: attempt.fabric, attempt: whole });
  return verdictOf(findings) === 'accepted';
}

/**
 * Where the attempt left the right way: the first command after which its step can no longer be brought to be accepted by going on,
 * without taking anything back, and what later findings owe to it. Undefined while that can still be done: then something is only missing.
 * Commands are judged in their own step, from the learner's own table. Pure. Throws as `gradeLesson`.
 */
export function firstDivergence(lesson: Lesson, attempt: Attempt): Divergence | undefined {
  const { commands } = attempt;
  for (let index = 0; index < commands.length; index++) {
    const at = stepOf(lesson, commands, index);
    if (canBeReached(lesson, attempt, commands.slice(0, index + 1), at)) continue;
    // What an earlier command spoiled is not laid to this one.
    if (!canBeReached(lesson, attempt, commands.slice(0, index), at)) continue;
    const command = commands[index]!;
    const step = lesson.steps[at]!.id;
    return { index, command, step, stemming: stemmingFrom(lesson, attempt, index, at) };
  }
  return undefined;
}

const keyOf = (f: Finding): string => `${f.code} ${JSON.stringify(f.about ?? {})}`;

function stemmingFrom(lesson: Lesson, attempt: Attempt, index: number, at: number): readonly Stemming[] {
  const later = attempt.commands
    .slice(index + 1)
    .filter((_, i) => stepOf(lesson, attempt.commands, index + 1 + i) > at);
  const put = [...workedOn(lesson, attempt, attempt.commands.slice(0, index), at), ...later];
  const marks = gradeLesson(lesson, attempt);
  const others = gradeLesson(lesson, { ...attempt, commands: put });
  return marks.slice(at).flatMap((mark, i) => compared(mark, others[at + i]!));
}

function compared(mark: Mark, other: Mark): readonly Stemming[] {
  const without = new Map(other.findings.map((f) => [keyOf(f), f.measured]));
  return mark.findings.flatMap((f): Stemming[] => {
    const was = without.get(keyOf(f));
    if (f.state !== 'wrong' || f.measured === undefined || was === undefined || was === f.measured) return [];
    return [{ step: mark.step, code: f.code, about: f.about, measured: f.measured, without: was }];
  });
}
