import { COMMANDS } from './commands/index.ts';
import { refused } from './pieces.ts';
import type { Applied, Command, Work } from './types.ts';

/**
 * The work after one command, or why the command cannot be followed; the work that came in is never changed. Total: a
 * command that asks for something impossible is refused, it never throws. The geometry says "nothing there" with a
 * RangeError, which becomes the refusal 'impossible'.
 */
export function apply(work: Work, command: Command): Applied {
  const kind = COMMANDS.get(command.do);
  if (kind === undefined) return refused('unknown-command', { command: String(command.do) });
  try {
    return kind.apply(work, command);
  } catch (error) {
    if (error instanceof RangeError) return refused('impossible', { reason: error.message });
    throw error;
  }
}
