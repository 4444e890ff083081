import { expect, test } from 'vitest';
import { gradeLesson } from '../../src/lib/grading/grade.ts';
import { variantOf } from '../../src/lib/lessons/drills/variant.ts';
import { workedLesson } from '../../src/lib/lessons/worked/index.ts';
import type { Command } from '../../src/lib/recipe/types.ts';
import { attemptOf, lessonOf } from '../lessons/drills/support.ts';

/* Two edges meet in a corner: whoever points there has said neither. Common practice: a seam is shown along its run, a corner is a point. */
test.each([0, 1] as const)(
  'the end %i of an edge stands for no edge where the drill asks for more',
  (end) => {
    let edges = 0;
    for (let seed = 0; seed < 200; seed++) {
      const v = variantOf({ exercise: 'block', seed, fabric: 'woven', band: 'wide', hints: 0, step: 1 });
      const lesson = lessonOf(v);
      const worked = workedLesson(lesson, 'woven').commands;
      for (const [i, command] of worked.entries()) {
        if (command.do !== 'identify' || !('on' in command.at)) continue;
        edges++;
        const at = { ...command.at, at: end };
        const commands = worked.map((one, k): Command => (k === i ? { ...command, at } : one));
        const [mark] = gradeLesson(lesson, attemptOf(lesson, commands));
        const wrong = mark!.findings.filter(({ state }) => state === 'wrong');
        expect(wrong.map(({ code, cause }) => [code, cause?.code])).toEqual([
          [`landmarks-found/${command.what}`, 'at-an-end'],
        ]);
        expect(wrong[0]!.measured).toBeGreaterThan(5);
      }
    }
    expect(edges).toBeGreaterThan(300);
  },
);
