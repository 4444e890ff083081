import { PHASES, type Phase } from '../../recipe/commands/known.ts';
import type { CommandName } from '../../recipe/types.ts';

type Fetch = () => Promise<unknown>;

/** Commands, tools and what the table draws for them, by phase. */
const FETCH: Readonly<Record<Phase, Fetch>> = {
  block: () => import('./block.ts'),
  open: () => import('../../machines/tools/open.ts'),
  legs: () => import('../../machines/tools/legs.ts'),
  line: () => import('./line.ts'),
  marks: () => import('./marks.ts'),
  stroke: () => import('./stroke.ts'),
  cut: () => import('./cut.ts'),
  dart: () => import('./dart.ts'),
  sewn: () => import('./sewn.ts'),
  caps: () => import('./caps.ts'),
  fullness: () => import('./fullness.ts'),
  proof: () => import('./proof.ts'),
  treat: () => import('./treat.ts'),
  finish: () => import('./finish.ts'),
};
/** Phases whose tools have no settings, and nothing that can be done at once: what shows these is not fetched for them. */
const BARE: readonly Phase[] = ['open', 'legs', 'line', 'marks', 'stroke'];

const fetched = new Set<Phase>();

const missing = (names: readonly CommandName[]): Phase[] =>
  [...new Set(names.map((name) => PHASES[name]))].filter((phase) => !fetched.has(phase));

/** Whether these commands can be given, and their tools taken in hand, at once. */
export const areFetched = (names: readonly CommandName[]): boolean => missing(names).length === 0;

/** Fetches what is needed to give and to show these commands; rejects when it cannot be had. */
export async function fetchFor(names: readonly CommandName[]): Promise<void> {
  await Promise.all(
    missing(names).map(async (phase) => {
      await Promise.all([FETCH[phase](), BARE.includes(phase) || import('../Strip.svelte')]);
      fetched.add(phase);
    }),
  );
}
