import type { Command, CommandName } from '../types.ts';
import type { CommandKind } from './kind.ts';
import { allow } from './allow.ts';
import { bridge } from './bridge.ts';
import { carryNotches } from './carry-notches.ts';
import { connect } from './connect.ts';
import { copy } from './copy.ts';
import { corner } from './corner.ts';
import { drawLine } from './draw-line.ts';
import { ease } from './ease.ts';
import { extendDart } from './extend-dart.ts';
import { grain } from './grain.ts';
import { identify } from './identify.ts';
import { label } from './label.ts';
import { notch } from './notch.ts';
import { openOut } from './open-out.ts';
import { overlay } from './overlay.ts';
import { place } from './place.ts';
import { read } from './read.ts';
import { removeNotch } from './remove-notch.ts';
import { renotch } from './renotch.ts';
import { separate } from './separate.ts';
import { slash } from './slash.ts';
import { takeOut } from './take-out.ts';
import { trueWithBack } from './true.ts';
import { turn } from './turn.ts';
import { walk } from './walk.ts';

type Kinds = { readonly [Name in CommandName]: CommandKind<Extract<Command, { readonly do: Name }>> };

/** Every kind of command under its name; the compiler sees to it that none is missing. */
export const KINDS: Kinds = {
  identify,
  read,
  'open-out': openOut,
  'draw-line': drawLine,
  notch,
  'remove-notch': removeNotch,
  'extend-dart': extendDart,
  connect,
  slash,
  turn,
  separate,
  place,
  overlay,
  copy,
  bridge,
  ease,
  'take-out': takeOut,
  true: trueWithBack,
  renotch,
  allow,
  corner,
  'carry-notches': carryNotches,
  label,
  grain,
  walk,
};

/** The kinds by name, for commands whose name is not known to the compiler. */
export const COMMANDS: ReadonlyMap<string, CommandKind<Command>> = new Map(
  Object.entries(KINDS) as unknown as [string, CommandKind<Command>][],
);
