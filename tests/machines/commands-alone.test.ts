import { expect, it } from 'vitest';
import { toolOf } from '../../src/lib/machines/tools/known.ts';
import { PHASES, kindOf } from '../../src/lib/recipe/commands/known.ts';
import type { CommandName } from '../../src/lib/recipe/types.ts';
import { areFetched, fetchFor } from '../../src/lib/table/phases/index.ts';
import { fetchCommands } from '../../src/lib/table/phases/commands.ts';

// As in phases.test.ts the source is the project's own division; nothing here may import all commands.
const names = Object.keys(PHASES) as CommandName[];

it('replays what is given without its tools, and fetches these once they are wanted', async () => {
  await fetchCommands(['turn', 'allow']);
  const known = names.filter((name) => kindOf(name) !== undefined);
  expect(known).toEqual(names.filter((name) => ['cut', 'finish'].includes(PHASES[name])));
  expect(names.filter((name) => toolOf(name) !== undefined)).toEqual([]);
  expect(areFetched(['turn'])).toBe(false);
  await fetchFor(['turn']);
  expect(toolOf('turn')?.id).toBe('turn');

  await fetchCommands(names);
  expect(names.filter((name) => kindOf(name) === undefined)).toEqual([]);
  expect(toolOf('walk')).toBeUndefined();
});
