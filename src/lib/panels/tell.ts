import type { Command } from '../recipe/types.ts';
import type { Units } from '../strings/units.ts';
import { announce } from '../table/announcer.ts';

/** Says what became of a command, and what it is, to who hears the page; `more` is said after it. Gives what was said. */
export async function tell(
  became: string,
  command: Command | undefined,
  units: Units,
  more = '',
): Promise<string> {
  // Where its words do not come, at least that it was done is said.
  const said =
    command && (await import('../strings/commands.ts').catch(() => undefined))?.describe(command, units);
  const text = `${became}${said ? `: ${said}` : '.'} ${more}`.trim();
  announce(text);
  return text;
}
