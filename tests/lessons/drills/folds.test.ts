import { expect, test } from 'vitest';
import type { Drill } from '../../../src/lib/lessons/drills/types.ts';
import { variantOf } from '../../../src/lib/lessons/drills/variant.ts';
import { workedLesson } from '../../../src/lib/lessons/worked/index.ts';
import { foldsOf } from '../../../src/lib/pattern/folds.ts';
import { replay } from '../../../src/lib/recipe/replay.ts';
import type { Cap } from '../../../src/lib/recipe/types.ts';
import { attemptOf, lessonOf } from './support.ts';

test('the fold that a drill asks for is one of the two that are offered for its dart', () => {
  for (let seed = 0; seed < 1000; seed++) {
    const one: Drill = { exercise: 'finish', seed, fabric: 'woven', band: 'usual', hints: 0 };
    const lesson = lessonOf(variantOf(one));
    const { commands } = workedLesson(lesson, 'woven');
    const cap = commands.find((c): c is Cap & { step?: string } => c.do === 'cap')!;
    const uncapped = commands.filter((c) => c !== cap);
    const { work } = replay({ ...attemptOf(lesson, commands), commands: uncapped });
    const front = work.pieces.find(({ darts }) => darts.some(({ id }) => id === cap.dart))!;
    const offered = foldsOf(front, cap.dart);
    expect(offered, `seed ${seed}`).toContain(cap.fold);
    expect([['centre', 'side'].join(), ['down', 'up'].join()], `seed ${seed}`).toContain(offered.join());
  }
});
