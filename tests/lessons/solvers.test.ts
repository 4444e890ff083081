import { describe, expect, it } from 'vitest';
import { loadLesson } from '../../src/cli/load-lessons.ts';
import { workedLesson, workedStep } from '../../src/lib/lessons/worked/index.ts';
import type { LessonStep } from '../../src/lib/lessons/types.ts';
import { replay } from '../../src/lib/recipe/replay.ts';
import { startWork } from '../../src/lib/recipe/start.ts';

const step = loadLesson('extend-a-dart')!.steps[0]!;
const table = startWork({ figure: 'F3', form: 'waist' });
const worked = (by: LessonStep['worked']) =>
  workedStep({ ...step, ...(by && { worked: by }) }, table, 'woven');

describe('the worked solution that a step names', () => {
  it('gives the commands that stand there, each in its step', () => {
    expect(worked(step.worked)).toEqual([
      { do: 'extend-dart', step: 'extend', dart: 'right/waist-dart', to: { landmark: 'right/bust-point' } },
    ]);
  });

  it('leaves out a command that this table does not follow', () => {
    const wrong = { do: 'extend-dart', dart: 'left', to: { landmark: 'right/bust-point' } };
    const commands = [wrong, { do: 'no-such-thing' }, ...(step.worked!['commands'] as object[])] as never[];
    expect(worked({ by: 'commands', commands }).map((command) => command.do)).toEqual(['extend-dart']);
  });

  it('is a fault of the lesson when nobody solves it, or something is not told', () => {
    expect(() => worked({ by: 'magic' })).toThrow(RangeError);
    expect(() => worked({ by: 'commands' })).toThrow(RangeError);
    expect(() => worked({ by: 'read-dart' })).toThrow(RangeError);
  });

  it('reads the dart of the body, on any figure', () => {
    const read = worked({
      by: 'read-dart',
      bust: 'right/bust-point',
      ends: ['right/waist-dart-centre-end', 'right/waist-dart-side-end'],
    });
    // The whole bust dart, B/4 − 2.5 degrees (memory: the published draft; facts.dartAngle is held against it elsewhere).
    expect(read[0]).toMatchObject({ what: 'dart-angle' });
    expect((read[0] as { value: number }).value).toBeCloseTo(table.block.facts.dartAngle, 9);
    // Intake c = 2 L sin(θ/2) (derived).
    const [angle, leg, intake] = read.map((one) => (one as { value: number }).value) as [
      number,
      number,
      number,
    ];
    expect(intake).toBeCloseTo(2 * leg * Math.sin(angle / 2), 9);
  });

  it('of a whole lesson is a recipe of its own: replayed it gives the same table', () => {
    for (const id of ['extend-a-dart', 'slanted-seam']) {
      const lesson = loadLesson(id)!;
      const { start, commands, work } = workedLesson(lesson, lesson.fabrics[0]!);
      const block = { figure: lesson.figure, ...(lesson.form && { form: lesson.form }) };
      expect(start).toEqual(startWork(block));
      const again = replay({
        format: 'pin-and-pivot/recipe',
        version: 1,
        block,
        fabric: lesson.fabrics[0]!,
        seed: 0,
        commands,
      });
      expect(again.unfollowed).toEqual([]);
      expect(again.work).toEqual(work);
    }
  });
});
