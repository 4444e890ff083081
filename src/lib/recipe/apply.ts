import { PHASES, kindOf } from './commands/known.ts';
import { refused } from './pieces.ts';
import type { Applied, Command, Work } from './types.ts';

/**
 * The work after one command, or why the command cannot be followed; the work that came in is never changed. Total: a
 * command that asks for something impossible is refused, it never throws. The geometry says "nothing there" with a
 * RangeError, which becomes the refusal 'impossible'. Throws for a command whose phase the caller should have fetched.
 */
export function apply(work: Work, command: Command): Applied {
  const kind = kindOf(command.do);
  if (kind === undefined) {
    if (Object.hasOwn(PHASES, command.do))
      throw new Error(`the commands of the phase '${PHASES[command.do]}' were not fetched`);
    return refused('unknown-command', { command: String(command.do) });
  }
  try {
    return kind.apply(work, command);
  } catch (error) {
    if (error instanceof RangeError) return refused('impossible', { reason: error.message });
    throw error;
  }
}
