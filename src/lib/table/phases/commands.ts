import { PHASES, type Phase } from '../../recipe/commands/known.ts';
import type { CommandName } from '../../recipe/types.ts';

/** The commands of each phase without its tools, with what the table draws for what they did. */
const FETCH: Readonly<Record<Phase, () => Promise<unknown>>> = {
  block: () => import('../../recipe/commands/block.ts'),
  open: () => import('../../recipe/commands/open.ts'),
  legs: () => import('../../recipe/commands/legs.ts'),
  line: () => import('../../recipe/commands/line.ts'),
  marks: () => import('../../recipe/commands/marks.ts'),
  stroke: () => import('../../recipe/commands/stroke.ts'),
  cut: () => Promise.all([import('../../recipe/commands/cut.ts'), import('./drawn/cut.ts')]),
  dart: () => import('../../recipe/commands/dart.ts'),
  sewn: () => import('../../recipe/commands/sewn.ts'),
  caps: () => import('../../recipe/commands/caps.ts'),
  fullness: () => Promise.all([import('../../recipe/commands/fullness.ts'), import('./drawn/fullness.ts')]),
  proof: () => Promise.all([import('../../recipe/commands/proof.ts'), import('./drawn/proof.ts')]),
  treat: () => Promise.all([import('../../recipe/commands/treat.ts'), import('./drawn/treat.ts')]),
  finish: () => Promise.all([import('../../recipe/commands/finish.ts'), import('./drawn/finish.ts')]),
};

/** Fetches what is needed to replay and to show these commands, not to give more of them; rejects when it cannot be had. */
export async function fetchCommands(names: readonly CommandName[]): Promise<void> {
  await Promise.all([...new Set(names.map((name) => PHASES[name]))].map((phase) => FETCH[phase]()));
}
