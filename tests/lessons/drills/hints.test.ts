import { describe, expect, it } from 'vitest';
import { CHECKS } from '../../../src/lib/grading/checks/index.ts';
import { drillLesson } from '../../../src/lib/lessons/drills/lesson.ts';
import { EXERCISES, SCALES } from '../../../src/lib/lessons/drills/types.ts';
import { variantOf } from '../../../src/lib/lessons/drills/variant.ts';
import { CAUTIONS } from '../../../src/lib/strings/cautions.ts';
import { drillWords } from '../../../src/lib/strings/drills.ts';
import { canGive } from '../can-give.ts';

describe.each(EXERCISES)('the words of drills of the kind %s', (exercise) => {
  const drills = (['knit', 'woven'] as const).flatMap((fabric) =>
    SCALES.flatMap((scale) =>
      (['mm', 'inch'] as const).map((units) =>
        drillLesson(
          variantOf({ exercise, seed: 7, fabric, band: 'usual', hints: 3, scale }),
          drillWords(units),
        ),
      ),
    ),
  );
  const steps = drills.flatMap((lesson) => lesson.steps);
  /** Each step as many drills have it: the ladders speak of what any of them can find. */
  const many = Array.from({ length: 40 }, (_, seed) =>
    drillLesson(variantOf({ exercise, seed, fabric: 'woven', band: 'usual', hints: 0 }), drillWords('mm')),
  ).flatMap((lesson) => lesson.steps);

  it('hint at what the checks of their step can find, at each of them, in three rungs', () => {
    for (const step of steps) {
      const codes = step.hints.flatMap((ladder) => ladder.codes);
      const used = step.checks.map(({ check }) => check);
      for (const check of used) expect(CHECKS.has(check)).toBe(true);
      for (const code of codes) {
        expect(used, code).toContain(code.split('/')[0]);
        expect(canGive(code, JSON.stringify(many.filter(({ id }) => id === step.id))), code).toBe(true);
      }
      const general = step.hints.some((ladder) => ladder.codes.length === 0);
      for (const check of used)
        expect(general || codes.some((code) => code.startsWith(`${check}/`)), check).toBe(true);
      expect(new Set(codes).size).toBe(codes.length);
      for (const { rungs } of step.hints) {
        expect(rungs).toHaveLength(3);
        for (const rung of rungs) expect(rung).toMatch(/^[A-Z0-9].{10,160}[.?]$/);
      }
    }
  });

  it('say in a few plain lines what is asked, at the scale and in the units that hold', () => {
    for (const step of steps) {
      expect(step.text.length).toBeLessThanOrEqual(25);
      for (const line of step.text) expect(line, step.id).not.toMatch(/[<>*_`\t]|\s$|NaN|undefined|\[object/);
      for (const caution of step.cautions) expect(CAUTIONS).toHaveProperty([caution]);
    }
  });
});
