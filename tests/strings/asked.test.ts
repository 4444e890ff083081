import { describe, expect, it } from 'vitest';
import { lessonIds, loadLesson } from '../../src/cli/load-lessons.ts';
import { CHECKS } from '../../src/lib/grading/checks/index.ts';
import { ASKED, askedOf } from '../../src/lib/strings/asked.ts';
import { decimal, formatLength } from '../../src/lib/strings/units.ts';

const lessons = lessonIds().map((id) => loadLesson(id)!);
const steps = lessons.flatMap(({ id, steps: all }) => all.map((step) => [`${id}/${step.id}`, step] as const));

/** Numbers that are no demand of their own: what the treatments are judged by where it says more than the limit does. */
const UNSAID = ['radius', 'knitTrimAbove', 'wovenTrimAbove', 'count', 'least', 'backCut', 'backCutAtSeam'];

describe('what a test asks', () => {
  it('is told for every check that lessons mark by', () => {
    const used = new Set(steps.flatMap(([, step]) => step.checks.map(({ check }) => check)));
    for (const check of used) expect(Object.keys(ASKED)).toContain(check);
    for (const check of Object.keys(ASKED)) expect([...CHECKS.keys()]).toContain(check);
  });

  it.each(steps)(
    '%s: whole sentences with all its numbers, shorter than the text of the lesson',
    (_id, step) => {
      const lines = askedOf(step, 'mm');
      const text = lines.join(' ');
      expect(lines.length).toBeGreaterThan(0);
      for (const line of lines) expect(line).toMatch(/^[A-Z0-9][^{}]*\.$/);
      expect(text).not.toMatch(/undefined|NaN|\//);
      expect(text.length).toBeLessThan(step.text.join(' ').length);
      for (const { check, names, numbers = {} } of step.checks)
        for (const [key, value] of Object.entries(numbers)) {
          const name = key.replace(/-\d+$/, '');
          // Without a seam that is smoothed nothing can leave its corner.
          if (UNSAID.includes(name) || (check === 'princess' && !names?.['smooth'])) continue;
          const said = [formatLength(value, 'mm'), `${decimal(100 * value, 0)} %`, decimal(value, 0)];
          expect(
            said.some((one) => text.includes(one)),
            `${key} ${value}`,
          ).toBe(true);
        }
    },
  );
});
