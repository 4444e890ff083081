import { PHASES, type Phase } from '../../recipe/commands/known.ts';
import type { CommandName } from '../../recipe/types.ts';

type Fetch = () => Promise<unknown>;

/** With what shows the settings of tools and what can be done at once: not every phase has such tools. */
const withStrip =
  (fetch: Fetch): Fetch =>
  () =>
    Promise.all([fetch(), import('../Strip.svelte')]);

/** Commands, tools and what the table draws for them, by phase. */
const FETCH: Readonly<Record<Phase, Fetch>> = {
  block: withStrip(() => import('./block.ts')),
  open: () => import('../../machines/tools/open.ts'),
  legs: () => import('../../machines/tools/legs.ts'),
  line: () => import('./line.ts'),
  marks: () => import('./marks.ts'),
  stroke: () => import('./stroke.ts'),
  cut: withStrip(() => import('./cut.ts')),
  dart: withStrip(() => import('./dart.ts')),
  sewn: withStrip(() => import('./sewn.ts')),
  caps: withStrip(() => import('./caps.ts')),
  fullness: withStrip(() => import('./fullness.ts')),
  finish: withStrip(() => import('./finish.ts')),
};

const fetched = new Set<Phase>();

const missing = (names: readonly CommandName[]): Phase[] =>
  [...new Set(names.map((name) => PHASES[name]))].filter((phase) => !fetched.has(phase));

/** Whether these commands can be given, and their tools taken in hand, at once. */
export const areFetched = (names: readonly CommandName[]): boolean => missing(names).length === 0;

/** Fetches what is needed to give and to show these commands; rejects when it cannot be had. */
export async function fetchFor(names: readonly CommandName[]): Promise<void> {
  await Promise.all(
    missing(names).map(async (phase) => {
      await FETCH[phase]();
      fetched.add(phase);
    }),
  );
}
