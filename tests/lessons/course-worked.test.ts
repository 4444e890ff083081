import { describe, expect, it } from 'vitest';
import { lessonIds, loadLesson } from '../../src/cli/load-lessons.ts';
import { gradeLesson } from '../../src/lib/grading/grade.ts';
import { blockOf } from '../../src/lib/lessons/block.ts';
import { workedStep } from '../../src/lib/lessons/worked/index.ts';
import { FIGURES } from '../../src/lib/pattern/figures.ts';
import { replayByStep } from '../../src/lib/recipe/replay.ts';
import type { Attempt, Command } from '../../src/lib/recipe/types.ts';

/** Every lesson of the course on every demo figure: what is worked, step by step from the table as it lies, is accepted. */
describe.each(lessonIds().filter((id) => id !== 'slanted-seam'))('the worked solution of %s', (id) => {
  const lesson = loadLesson(id)!;
  const ids = lesson.steps.map((step) => step.id);

  it.each(
    Object.keys(FIGURES).flatMap((figure) => lesson.fabrics.map((fabric) => [figure, fabric] as const)),
  )('is accepted in every step on figure %s for a %s', (figure, fabric) => {
    const of = (commands: readonly Command[]): Attempt => ({
      format: 'pin-and-pivot/recipe',
      version: 1,
      block: { ...blockOf(lesson), figure },
      fabric,
      seed: 0,
      lesson: { id, content: lesson.content },
      commands,
    });
    const commands: Command[] = [];
    for (const step of lesson.steps) {
      const worked = workedStep(step, replayByStep(of(commands), ids).get(step.id)!.before, fabric);
      expect(worked.length, step.id).toBeGreaterThan(0);
      commands.push(...worked);
    }
    const open = gradeLesson(lesson, of(commands)).map((mark) => [
      mark.step,
      mark.verdict,
      mark.findings.filter((f) => f.state === 'wrong' || f.state === 'missing'),
    ]);
    expect(open).toEqual(ids.map((step) => [step, 'accepted', []]));
  });
});
