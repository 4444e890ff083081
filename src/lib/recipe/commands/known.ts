import type { Command, CommandName } from '../types.ts';
import type { CommandKind } from './kind.ts';

/** Commands are fetched by the part of the work in which they are first needed. */
export type Phase =
  | 'block'
  | 'open'
  | 'legs'
  | 'line'
  | 'marks'
  | 'stroke'
  | 'cut'
  | 'dart'
  | 'sewn'
  | 'caps'
  | 'fullness'
  | 'proof'
  | 'treat'
  | 'finish';

/** Every command, and the phase it belongs to. */
export const PHASES: Readonly<Record<CommandName, Phase>> = {
  identify: 'block',
  read: 'block',
  'open-out': 'open',
  'draw-line': 'line',
  'draw-curve': 'stroke',
  notch: 'marks',
  'remove-notch': 'marks',
  'extend-dart': 'legs',
  connect: 'marks',
  slash: 'cut',
  turn: 'cut',
  separate: 'cut',
  place: 'cut',
  overlay: 'proof',
  'draw-slash': 'dart',
  'cut-slash': 'dart',
  pivot: 'dart',
  'back-off': 'sewn',
  'true-legs': 'caps',
  cap: 'caps',
  fullness: 'fullness',
  'part-at-darts': 'fullness',
  'smooth-seam': 'fullness',
  'notch-seam': 'fullness',
  copy: 'treat',
  bridge: 'treat',
  ease: 'treat',
  'take-out': 'treat',
  true: 'treat',
  renotch: 'treat',
  allow: 'finish',
  corner: 'finish',
  'carry-notches': 'finish',
  label: 'finish',
  grain: 'finish',
  walk: 'finish',
};

export type Kinds = {
  readonly [Name in CommandName]: CommandKind<Extract<Command, { readonly do: Name }>>;
};

const known = new Map<string, CommandKind<Command>>();

/** Makes kinds known to `apply`; gives them back. */
export function register<K extends Partial<Kinds>>(kinds: K): K {
  for (const [name, kind] of Object.entries(kinds)) known.set(name, kind as unknown as CommandKind<Command>);
  last = undefined;
  return kinds;
}

// Commands come in rows of one kind, widths and corners above all.
let last: CommandKind<Command> | undefined;

/** The kind of that name; undefined when there is none, or its phase was not fetched. */
export function kindOf(name: string): CommandKind<Command> | undefined {
  if (last === undefined || last.name !== name) last = known.get(name);
  return last;
}
