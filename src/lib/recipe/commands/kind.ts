import type { GenericSchema } from 'valibot';
import type { Applied, Command, Work } from '../types.ts';

/**
 * What a kind of command is: its name, the form in which it stands in a file, and what it does. `apply` is pure; it
 * gives the next work, or refuses with a code and leaves everything as it was.
 */
export interface CommandKind<C extends Command> {
  readonly name: C['do'];
  readonly schema: GenericSchema<unknown, C>;
  readonly apply: (work: Work, command: C) => Applied;
}

/** Gives the kind back, checked against the command's type. */
export const kind = <C extends Command>(of: CommandKind<C>): CommandKind<C> => of;
