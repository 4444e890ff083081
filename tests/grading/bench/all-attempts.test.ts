import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { LESSONS, lessonIds } from '../../../src/cli/load-lessons.ts';
import { invariantsOf } from '../../../src/lib/grading/bench/invariants.ts';
import { parseAttempt } from '../../../src/lib/recipe/parse.ts';
import { apply } from '../../../src/lib/recipe/apply.ts';
import { startWork } from '../../../src/lib/recipe/start.ts';
import type { Attempt } from '../../../src/lib/recipe/types.ts';

/** Every attempt that is kept with the lessons, right and wrong ones. */
const attempts = lessonIds().flatMap((id) =>
  readdirSync(join(LESSONS, id), { recursive: true })
    .map(String)
    .filter((name) => name.endsWith('.attempt.json'))
    .map((name): [string, Attempt] => {
      const parsed = parseAttempt(readFileSync(join(LESSONS, id, name), 'utf8'));
      if ('problems' in parsed) throw new Error(name);
      return [`${id}/${name}`, parsed.ok];
    }),
);

// Source: arithmetic. Cutting and turning rigid sheets changes neither an angle nor an area; drawing a dart longer does, by a triangle.
describe('on every table of every attempt', () => {
  it('paper and angle sums are what the block says, to rounding', () => {
    const bad: string[] = [];
    let tables = 0;
    for (const [name, attempt] of attempts) {
      let work = startWork(attempt.block);
      for (const command of attempt.commands) {
        const next = apply(work, command);
        if (!('work' in next)) continue;
        work = next.work;
        tables++;
        const { bustPoints, area } = invariantsOf(work, attempt.fabric);
        if (Math.abs(area.sheets - area.expected) > 1e-5) bad.push(`${name} ${command.do} area ${area.sheets - area.expected}`);
        for (const { expected, paper, id, beside } of bustPoints)
          if (expected !== undefined && Math.abs(paper - expected) > 1e-9) bad.push(`${name} ${command.do} ${id} ${paper - expected} ${beside}`);
      }
    }
    console.log(tables, bad.length, bad.slice(0, 40).join('\n'));
    expect(bad).toEqual([]);
  });
});
