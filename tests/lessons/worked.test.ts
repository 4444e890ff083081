import { describe, expect, it } from 'vitest';
import { gradeStep } from '../../src/lib/grading/grade.ts';
import { workedStep } from '../../src/lib/lessons/worked/index.ts';
import { FIGURES } from '../../src/lib/pattern/figures.ts';
import { replayByStep } from '../../src/lib/recipe/replay.ts';
import type { Attempt, Command, Fabric } from '../../src/lib/recipe/types.ts';
import { sampleAttempt } from '../recipe/sample.ts';
import { loadLesson } from '../../src/cli/load-lessons.ts';

const found = loadLesson('slanted-seam');
if (!found) throw new Error('the lesson is not there');
const lesson = found;
const ids = lesson.steps.map((step) => step.id);

function attemptOf(figure: string, fabric: Fabric, commands: readonly Command[]): Attempt {
  return {
    format: 'pin-and-pivot/recipe',
    version: 1,
    block: { figure },
    fabric,
    seed: 0,
    lesson: { id: lesson.id, content: lesson.content },
    commands,
  };
}

describe('the worked solution', () => {
  it.each(Object.keys(FIGURES).flatMap((figure) => [[figure, 'knit'] as const, [figure, 'woven'] as const]))(
    'is accepted in every step on figure %s for a %s',
    (figure, fabric) => {
      const commands: Command[] = [];
      for (const step of lesson.steps) {
        const before = replayByStep(attemptOf(figure, fabric, commands), ids).get(step.id)?.before;
        if (!before) throw new Error(`no table before ${step.id}`);
        const worked = workedStep(step, before, fabric);
        expect(worked.length, step.id).toBeGreaterThan(0);
        commands.push(...worked);
      }
      const attempt = attemptOf(figure, fabric, commands);
      const steps = replayByStep(attempt, ids);
      const verdicts = lesson.steps.map((step) => {
        const replayed = steps.get(step.id);
        if (!replayed) throw new Error(`no replay of ${step.id}`);
        return [step.id, gradeStep(step, { ...replayed, fabric, attempt }).verdict];
      });
      expect(verdicts).toEqual(ids.map((id) => [id, 'accepted']));
    },
  );

  it("goes on from the learner's own line, not from a stored one", () => {
    const own = sampleAttempt('F3', 'knit', { shoulder: 0.55, d1: 22, d2: 12, upTo: 'notches' });
    const commands: Command[] = [...own.commands];
    for (const id of ['working-darts', 'connectors', 'first-dart', 'second-dart', 'separate', 'leftover']) {
      const step = lesson.steps.find((one) => one.id === id);
      const before = replayByStep({ ...own, commands }, ids).get(id)?.before;
      if (!step || !before) throw new Error(`no step ${id}`);
      commands.push(...workedStep(step, before, 'knit'));
      const attempt = { ...own, commands };
      const replayed = replayByStep(attempt, ids).get(id);
      if (!replayed) throw new Error(`no replay of ${id}`);
      expect(gradeStep(step, { ...replayed, fabric: 'knit', attempt }).verdict, id).toBe('accepted');
    }
  });
});
