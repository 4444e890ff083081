import { expect, it } from 'vitest';
import { lessonIds, loadLesson } from '../../src/cli/load-lessons.ts';
import { blockOf } from '../../src/lib/lessons/block.ts';
import { workedStep } from '../../src/lib/lessons/worked/index.ts';
import '../../src/lib/machines/tools/index.ts';
import { apply } from '../../src/lib/recipe/apply.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import type { Work } from '../../src/lib/recipe/types.ts';
import '../../src/lib/strings/tool-words.ts';
import { targets } from '../../src/lib/table/targets.ts';

/** A word that a name was to have is missing, or stands there as code. */
const BROKEN = /^$| {2}|^ | $| [,.;:]|\b(the|of|at|from|on)(,|$)|undefined|NaN|\//;

it.each(lessonIds())('each handle that the steps of %s show has a whole name', (id) => {
  const lesson = loadLesson(id)!;
  let work: Work = startWork(blockOf(lesson));
  let seen = 0;
  for (const step of lesson.steps) {
    const commands = workedStep(step, work, 'woven');
    for (const command of [undefined, ...commands]) {
      const next = command && apply(work, command);
      if (next && 'refused' in next) throw new Error(`${command!.do}: ${next.refused.code}`);
      work = next ? next.work : work;
      const labels = step.tools.flatMap((tool) =>
        targets(work, tool, { fabric: 'woven', units: 'mm' }).map(({ label }) => label),
      );
      expect(labels.filter((label) => BROKEN.test(label))).toEqual([]);
      seen += labels.length;
    }
  }
  expect(seen).toBeGreaterThan(0);
});
