import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { LESSONS, stepFolders } from '../../../src/cli/load-lessons.ts';
import type { Lesson } from '../../../src/lib/lessons/types.ts';
import { parseAttempt } from '../../../src/lib/recipe/parse.ts';
import type { Attempt, Command } from '../../../src/lib/recipe/types.ts';

const ENDING = '.attempt.json';

/** The golden attempts of a step that pass, in the order of their names. Throws when one cannot be read. */
export function passesOf(lesson: string, step: number): readonly { name: string; attempt: Attempt }[] {
  const folder = join(LESSONS, lesson, stepFolders(lesson).at(step)!, 'attempts');
  const names = readdirSync(folder).filter((name) => name.startsWith('pass-') && name.endsWith(ENDING));
  return names.sort().map((name) => {
    const parsed = parseAttempt(readFileSync(join(folder, name), 'utf8'));
    if ('problems' in parsed) throw new Error(`${lesson} ${name}: ${JSON.stringify(parsed.problems)}`);
    return { name: name.slice(0, -ENDING.length), attempt: parsed.ok };
  });
}

const plain = (command: Command): string => JSON.stringify({ ...command, step: undefined });

/**
 * The attempt with only what its steps have tools for: a command given again unchanged is left out where its step does not offer it.
 * undefined when another command was given elsewhere than in a step that offers it.
 */
export function asOffered(lesson: Lesson, attempt: Attempt): Attempt | undefined {
  const commands = attempt.commands.filter((command, i) => {
    const tools = lesson.steps.find(({ id }) => id === command.step)?.tools;
    const again = attempt.commands.slice(0, i).some((one) => plain(one) === plain(command));
    return tools?.includes(command.do) || !again;
  });
  const offered = commands.every(({ do: name, step }) =>
    lesson.steps.some(({ id, tools }) => id === step && tools.includes(name)),
  );
  return offered ? { ...attempt, commands } : undefined;
}
