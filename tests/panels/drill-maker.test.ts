import { describe, expect, test } from 'vitest';
import { beginningOf } from '../../src/lib/lessons/drills/begin.ts';
import { stepCount } from '../../src/lib/lessons/drills/steps.ts';
import { drillLesson } from '../../src/lib/lessons/drills/lesson.ts';
import { EXERCISES, newest, type ExerciseId } from '../../src/lib/lessons/drills/types.ts';
import { paperOf, variantOf } from '../../src/lib/lessons/drills/variant.ts';
import type { LessonStep, StepToWork } from '../../src/lib/lessons/types.ts';
import { make as block } from '../../src/lib/panels/drills/block.ts';
import { make as finish } from '../../src/lib/panels/drills/finish.ts';
import { make as fullness } from '../../src/lib/panels/drills/fullness.ts';
import { make as join } from '../../src/lib/panels/drills/join.ts';
import { make as line } from '../../src/lib/panels/drills/line.ts';
import type { Maker } from '../../src/lib/panels/drills/maker.ts';
import { make as moving } from '../../src/lib/panels/drills/moving.ts';
import { make as princess } from '../../src/lib/panels/drills/princess.ts';
import { make as ready } from '../../src/lib/panels/drills/ready.ts';
import { make as row } from '../../src/lib/panels/drills/row.ts';
import type { Block } from '../../src/lib/pattern/block.ts';
import { LADDERS } from '../../src/lib/strings/drill-words/hints.ts';
import { drillWords } from '../../src/lib/strings/drills.ts';

const MAKERS: Readonly<Record<ExerciseId, Maker>> = {
  slash: moving,
  pivot: moving,
  angle: moving,
  split: moving,
  join,
  finish,
  fullness,
  parallel: row,
  several: row,
  princess,
  line,
  block,
  ready,
};
const SEEDS = [0, 7, 4711, 31_337, 600_613, 999_999];

/** A step as it is worked: without what marks it. */
function toWork({ checks: _, worked: __, skill: ___, ...step }: LessonStep): StepToWork {
  return step;
}

test.each(EXERCISES)('the first step alone of the kind %s says so before it is begun', (exercise) => {
  const drill = newest({ exercise, seed: 4711, fabric: 'woven', band: 'usual', hints: 0, step: 1 });
  const begun = beginningOf(drill);
  const of = { front: paperOf(begun.figure, begun.form) } as Block;
  const { given, steps, summary } = drillLesson(variantOf(drill), drillWords('mm'));
  const made = MAKERS[exercise](begun, of, LADDERS, 'mm');
  expect(steps).toHaveLength(1);
  expect(summary).toMatch(/^One step, and no more: /);
  // Where anything is given before it, the whole is fetched at once.
  if (given === undefined) expect(made.lesson.summary).toBe(summary);
  else expect(exercise).toBe('ready');
});

describe.each(EXERCISES)('a drill of the kind %s on a page', (exercise) => {
  test.each(SEEDS)('with the seed %i begins as the whole drill does, and becomes it', async (seed) => {
    for (const hints of [0, 2]) {
      const drill = newest({ exercise, seed, fabric: 'woven', band: 'usual', hints });
      const begun = beginningOf(drill);
      const of = { front: paperOf(begun.figure, begun.form) } as Block;
      const whole = drillLesson(variantOf(drill), drillWords('mm'));
      const made = MAKERS[exercise](begun, of, LADDERS, 'mm');
      const { given = [], steps, ...rest } = whole;
      const { given: done = [], steps: begins, ...own } = made.lesson;
      expect(own).toEqual(rest);
      expect(begins[0]).toEqual(toWork(steps[0]!));
      // Only texts come later, and none of them comes in part.
      expect([...done, ...begins].map((step) => ({ ...step, text: [] }))).toEqual(
        [...given, ...steps].map((step) => ({ ...toWork(step), text: [] })),
      );
      expect(done).toHaveLength(given.length);
      begins.slice(1).forEach(({ text }, i) => expect([[], steps[i + 1]!.text]).toContainEqual(text));
      expect(await made.whole()).toEqual(whole);
    }
  });

  test('with one step has the text of that step, and what is given by its name', async () => {
    for (const [i, seed] of SEEDS.entries()) {
      const step = (i % stepCount(exercise)) + 1;
      const drill = newest({ exercise, seed, fabric: 'knit', band: 'usual', hints: 1, step });
      const begun = beginningOf(drill);
      const block = { front: paperOf(begun.figure, begun.form) } as Block;
      const made = MAKERS[exercise](begun, block, LADDERS, 'inch');
      const whole = await made.whole();
      expect(whole).toEqual(drillLesson(variantOf(drill), drillWords('inch')));
      expect(whole.steps).toHaveLength(1);
      expect(whole.steps[0]!.text.length).toBeGreaterThan(0);
      expect(whole.summary.toLowerCase()).toContain(whole.steps[0]!.title.toLowerCase());
      // The same steps are there before the rules come.
      expect(made.lesson.given?.map(({ id }) => id)).toEqual(whole.given?.map(({ id }) => id));
      expect(made.lesson.steps.map(({ id }) => id)).toEqual(whole.steps.map(({ id }) => id));
    }
  });
});
