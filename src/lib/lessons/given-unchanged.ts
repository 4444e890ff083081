import { tableFor } from '../recipe/table-start.ts';
import type { Attempt, Command } from '../recipe/types.ts';
import type { Lesson } from './types.ts';
import { workedFrom } from './worked/solvers.ts';

/** A command as text that does not hang on the order of its keys. */
const textOf = (command: Command): string =>
  JSON.stringify(command, (_, value: unknown) =>
    typeof value === 'object' && value !== null && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
      : value,
  );

/**
 * Whether the steps that are done when an exercise begins are in this attempt what the exercise gives; a file may say something else there. True
 * for a file of other rules (another `content`), of which nothing can be said. Throws as `apply`, for commands that were not fetched.
 */
export function givenUnchanged(lesson: Lesson, attempt: Attempt): boolean {
  const { given = [] } = lesson;
  if (given.length === 0 || attempt.lesson.content !== lesson.content) return true;
  const steps = given.map(({ id }) => id);
  const said = attempt.commands.filter(({ step = '' }) => steps.includes(step)).map(textOf);
  const gives = workedFrom(tableFor(attempt.block), given, attempt.fabric).commands.map(textOf);
  return said.length === gives.length && gives.every((text, i) => text === said[i]);
}
