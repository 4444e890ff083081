import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import '../../../src/lib/recipe/commands/index.ts';
import { gradeLesson } from '../../../src/lib/grading/grade.ts';
import { blockOf } from '../../../src/lib/lessons/block.ts';
import { drillLesson, type DrillWords } from '../../../src/lib/lessons/drills/lesson.ts';
import { fromFragment, SEEDS, toFragment } from '../../../src/lib/lessons/drills/link.ts';
import { BANDS, EXERCISES, type Drill } from '../../../src/lib/lessons/drills/types.ts';
import { variantOf } from '../../../src/lib/lessons/drills/variant.ts';
import type { Lesson } from '../../../src/lib/lessons/types.ts';
import { workedStep } from '../../../src/lib/lessons/worked/index.ts';
import { replayByStep } from '../../../src/lib/recipe/replay.ts';
import type { Attempt, Command } from '../../../src/lib/recipe/types.ts';

const WORDS: DrillWords = {
  title: () => 'A drill',
  summary: () => '',
  step: (_, id) => ({ title: id, text: [], hints: [] }),
};
const drill = fc.record({
  exercise: fc.constantFrom(...EXERCISES),
  seed: fc.integer({ min: 0, max: SEEDS - 1 }),
  fabric: fc.constantFrom('woven' as const, 'knit' as const),
  band: fc.constantFrom(...BANDS),
  hints: fc.integer({ min: 0, max: 3 }),
});
const lessonOf = (one: Drill): Lesson => drillLesson(variantOf(one), WORDS);
const attemptOf = (lesson: Lesson, commands: readonly Command[]): Attempt => ({
  format: 'pin-and-pivot/recipe',
  version: 1,
  lesson: { id: lesson.id, content: lesson.content },
  block: blockOf(lesson),
  fabric: lesson.fabrics[0]!,
  seed: 0,
  commands,
});
function solved(lesson: Lesson): Attempt {
  const ids = lesson.steps.map((s) => s.id);
  const commands: Command[] = [];
  for (const step of lesson.steps) {
    const { before } = replayByStep(attemptOf(lesson, commands), ids).get(step.id)!;
    commands.push(...workedStep(step, before, lesson.fabrics[0]!));
  }
  return attemptOf(lesson, commands);
}

describe('drills', () => {
  test.each(EXERCISES)(
    'a thousand of the kind %s are solved by their own generator, and doing nothing never is',
    (exercise) => {
      for (let seed = 0; seed < 1000; seed++) {
        const one: Drill = { exercise, seed, fabric: 'woven', band: 'strict', hints: 0 };
        const lesson = lessonOf(one);
        const marks = gradeLesson(lesson, solved(lesson));
        expect(
          marks.map((m) => [m.verdict, m.findings.filter((f) => f.state === 'wrong')]),
          toFragment(one),
        ).toEqual(lesson.steps.map(() => ['accepted', []]));
        if (seed % 20 === 0)
          for (const mark of gradeLesson(lesson, attemptOf(lesson, [])))
            expect(mark.verdict).toBe('notReady');
      }
    },
    60_000,
  );

  test('the link says all of a drill, and the same drill is always the same exercise', () => {
    fc.assert(
      fc.property(drill, (one) => {
        expect(fromFragment(`#${toFragment(one)}`)).toEqual({ ok: one });
        expect(lessonOf(one)).toEqual(lessonOf({ ...one }));
      }),
    );
  });

  test('seeds make thousands of different exercises', () => {
    const seen = new Set<string>();
    for (const exercise of EXERCISES)
      for (let seed = 0; seed < 1000; seed++) {
        const { drill: _, ...rest } = variantOf({ exercise, seed, fabric: 'woven', band: 'usual', hints: 0 });
        seen.add(JSON.stringify([exercise, rest]));
      }
    expect(seen.size).toBeGreaterThan(2500);
  });

  test.each([
    ['slash.1.woven.usual', 'link'],
    ['slit.1.woven.usual.0', 'exercise'],
    ['slash.1000000.woven.usual.0', 'seed'],
    ['slash.-1.woven.usual.0', 'seed'],
    ['slash.1.silk.usual.0', 'fabric'],
    ['slash.1.woven.loose.0', 'band'],
    ['slash.1.woven.usual.4', 'hints'],
    ['constructor.1.woven.usual.0', 'exercise'],
  ])('the link %s is refused at its %s', (text, path) => {
    expect(fromFragment(text)).toMatchObject({ problem: { path } });
  });
});
