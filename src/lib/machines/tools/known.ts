import type { CommandName } from '../../recipe/types.ts';
import type { ToolSpec } from '../tool-spec.ts';
import { toolMachine, type ToolMachine } from '../tool.ts';

const known = new Map<CommandName, ToolSpec>();
const machines = new Map<CommandName, ToolMachine>();

/** Makes tools known by the command each gives; gives them back. */
export function register<T extends Partial<Record<CommandName, ToolSpec>>>(tools: T): T {
  for (const tool of Object.values<ToolSpec>(tools as Record<string, ToolSpec>)) known.set(tool.id, tool);
  return tools;
}

/** The tool; undefined when its phase was not fetched. */
export const toolOf = (tool: CommandName): ToolSpec | undefined => known.get(tool);

/** The machine of a tool that is known; made when it is first taken in hand. */
export function machineOf(spec: ToolSpec): ToolMachine {
  let machine = machines.get(spec.id);
  if (!machine) machines.set(spec.id, (machine = toolMachine(spec)));
  return machine;
}
