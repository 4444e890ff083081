import type { Command, Work } from '../recipe/types.ts';
import { describe } from '../strings/commands.ts';
import type { Units } from '../strings/units.ts';
import { capGone } from './cap-gone.ts';

/** What became of a command, and what it is, for who hears the page. */
export const told = (became: string, command: Command | undefined, units: Units): string =>
  command ? `${became}: ${describe(command, units)}` : `${became}.`;

/** What is said of a command that was given, and what it took along from the table before it: a cap with the sewn point that was moved. */
export function toldDone(
  command: Command,
  [was, now]: readonly [Work | undefined, Work | undefined],
  units: Units,
): { readonly gone: string; readonly said: string } {
  const gone = command.do === 'back-off' ? capGone(was, now) : '';
  return { gone, said: `${told('Done', command, units)} ${gone}`.trim() };
}
