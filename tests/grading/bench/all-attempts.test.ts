import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it, vi } from 'vitest';
import { LESSONS, lessonIds } from '../../../src/cli/load-lessons.ts';
import { invariantsOf } from '../../../src/lib/grading/bench/invariants.ts';
import { apply } from '../../../src/lib/recipe/apply.ts';
import '../../../src/lib/recipe/commands/index.ts';
import { parseAttempt } from '../../../src/lib/recipe/parse.ts';
import { startWork } from '../../../src/lib/recipe/start.ts';

vi.setConfig({ testTimeout: 120_000 });

/** Every attempt that is kept with the lessons, right and wrong ones. */
const attempts = lessonIds().flatMap((id) =>
  readdirSync(join(LESSONS, id), { recursive: true })
    .map(String)
    .filter((name) => name.endsWith('.attempt.json'))
    .map((name) => {
      const parsed = parseAttempt(readFileSync(join(LESSONS, id, name), 'utf8'));
      if ('problems' in parsed) throw new Error(name);
      return { name: `${id}/${name}`, attempt: parsed.ok };
    }),
);

// Source: arithmetic. Cutting and turning rigid sheets changes neither an angle nor an area; drawing a dart longer takes a triangle.
it('on every table on the way of every attempt at every lesson, angles and paper are what the block says', () => {
  const off: string[] = [];
  let tables = 0;
  for (const { name, attempt } of attempts) {
    let work = startWork(attempt.block);
    for (const command of attempt.commands) {
      const next = apply(work, command);
      if ('refused' in next) continue;
      work = next.work;
      tables += 1;
      const { bustPoints, area, seams, leftovers } = invariantsOf(work, attempt.fabric);
      const where = `${name}, ${command.do}`;
      if (!(Math.abs(area.sheets - area.expected) < 1e-6)) off.push(`${where}: paper`);
      for (const { paper, expected, beside, darts } of bustPoints) {
        if (expected !== undefined && !(Math.abs(paper - expected) < 1e-9)) off.push(`${where}: angle`);
        if (![beside, ...darts.map(({ open }) => open)].every(Number.isFinite)) off.push(`${where}: open`);
      }
      const lengths = [
        ...seams.flatMap(({ a, b, worst }) => [a, b, worst]),
        ...leftovers.map((l) => l.excess),
      ];
      if (!lengths.every(Number.isFinite)) off.push(`${where}: lengths`);
    }
  }
  expect(off).toEqual([]);
  expect(tables).toBeGreaterThan(5_000);
});
