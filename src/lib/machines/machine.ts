import { createMachine, type setup as Setup } from 'xstate';

/**
 * xstate's `setup` with its types, for machines that take from it only `createMachine`: xstate's own also hands out what sends to, spawns
 * and stops other actors, which no machine here does and every page would fetch.
 */
export const setup = (({ actions, guards }: { actions: object; guards: object }) => ({
  createMachine: (config: object) => createMachine(config as never, { actions, guards } as never),
})) as unknown as typeof Setup;
