import type { Anchor, Applied, Command, Fabric, TurnBy, Work } from '../types.ts';

/** The forms a key of a command may have in a file, and what is read from each; their bounds are in `shapes.ts`. */
export interface Forms {
  readonly id: string;
  readonly name: string;
  readonly pair: readonly [string, string];
  readonly mm: number;
  readonly width: number;
  readonly fraction: number;
  readonly angle: number;
  readonly count: number;
  readonly flag: boolean;
  readonly end: 'start' | 'end';
  readonly fabric: Fabric;
  readonly anchor: Anchor;
  readonly points: readonly Anchor[];
  readonly turnBy: TurnBy;
  readonly amount: 'measured' | number;
}

type Named<T> = { [F in keyof Forms]: Forms[F] extends T ? F : never }[keyof Forms];
type Form<T> = [T] extends [string] ? Named<T> | readonly T[] : Named<T>;

/** The form of each key a kind of command has for itself: one of `Forms`, with a `?` when it may be left out, or a list of words. */
export type Keys<C> = {
  readonly [K in Exclude<keyof C, 'do' | 'step'>]-?: object extends Pick<C, K>
    ? `${Named<NonNullable<C[K]>>}?`
    : Form<C[K]>;
};

/**
 * What a kind of command is: its name, the keys it has in a file, and what it does. `apply` is pure; it gives the next
 * work, or refuses with a code and leaves everything as it was.
 */
export interface CommandKind<C extends Command> {
  readonly name: C['do'];
  readonly keys: Keys<C>;
  readonly apply: (work: Work, command: C) => Applied;
}

/** Gives the kind back, checked against the command's type. */
export const kind = <C extends Command>(of: CommandKind<C>): CommandKind<C> => of;
