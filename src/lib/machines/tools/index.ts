import type { CommandName } from '../../recipe/types.ts';
import { toolMachine, type ToolMachine, type ToolSpec } from '../tool.ts';
import { allow, corner } from './allowances.ts';
import { bridge } from './bridge.ts';
import { connect } from './connect.ts';
import { drawLine } from './draw-line.ts';
import { extendDart } from './extend-dart.ts';
import { grain } from './grain.ts';
import { identify } from './identify.ts';
import { ease, renotch, takeOut, trueBack } from './leftover.ts';
import { notch, removeNotch } from './notch.ts';
import { openOut } from './open-out.ts';
import { carryNotches, copy, label, overlay, place } from './pieces.ts';
import { read } from './read.ts';
import { separate } from './separate.ts';
import { slash } from './slash.ts';
import { turn } from './turn.ts';
import { walk } from './walk.ts';

/** Every tool, by the command it gives. A new one touches its own file and this list. */
export const TOOLS: Readonly<Record<CommandName, ToolSpec>> = {
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
  true: trueBack,
  renotch,
  allow,
  corner,
  'carry-notches': carryNotches,
  label,
  grain,
  walk,
};

const machines = new Map<CommandName, ToolMachine>();

/** The machine of a tool; made when it is first taken in hand. */
export function machineOf(tool: CommandName): ToolMachine {
  let machine = machines.get(tool);
  if (!machine) machines.set(tool, (machine = toolMachine(TOOLS[tool])));
  return machine;
}
