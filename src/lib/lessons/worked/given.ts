import type { Command } from '../../recipe/types.ts';
import type { Given, Worked } from './give.ts';

/**
 * Gives the commands that stand in the step: `worked: {by: "commands", commands: [...]}`, each as in a recipe file, without
 * its step. Enough wherever anchors and intent say it all: then the same commands are right on every block.
 */
export const givenCommands: Worked = ({ rule, give }) => {
  const commands = rule.worked?.['commands'];
  if (!Array.isArray(commands)) throw new RangeError(`the step '${rule.id}' gives no list of commands`);
  for (const command of commands as unknown as readonly Command[]) give(command as Given);
};
