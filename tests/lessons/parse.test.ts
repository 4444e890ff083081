import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { LESSONS, lessonIds, loadLesson, stepFolders } from '../../src/cli/load-lessons.ts';
import { parseLesson } from '../../src/lib/lessons/parse.ts';
import { STEPS } from '../recipe/sample.ts';

type Data = Record<string, unknown>;
const read = (...path: string[]): Data => JSON.parse(readFileSync(join(LESSONS, ...path), 'utf8')) as Data;
const head = read('slanted-seam', 'lesson.json');
const steps = stepFolders('slanted-seam').map((folder) => read('slanted-seam', folder, 'step.json'));
const problems = (lesson: unknown, parts: readonly unknown[]) => {
  const parsed = parseLesson(lesson, parts);
  return 'problems' in parsed ? parsed.problems : [];
};

describe('a lesson', () => {
  it('is loaded with its steps in the order that it names, whatever order they come in', () => {
    const parsed = parseLesson(head, [...steps].reverse());
    expect('ok' in parsed && parsed.ok.steps.map((step) => step.id)).toEqual(STEPS);
    expect('ok' in parsed && parsed.ok).toEqual(loadLesson('slanted-seam'));
  });

  it('is found by its folder, and nothing outside the folder is', () => {
    expect(lessonIds()).toContain('slanted-seam');
    expect(loadLesson('no-such-lesson')).toBeUndefined();
    expect(loadLesson('../lessons/slanted-seam')).toBeUndefined();
  });
});

describe('what is wrong with a lesson is told by path, expected and found', () => {
  it.each([
    ['a head that is none', null, steps, ''],
    ['no steps', { ...head, steps: [] }, steps, 'steps'],
    ['a fabric that is none', { ...head, fabrics: ['felt'] }, steps, 'fabrics[0]'],
    ['a figure that is none', { ...head, figure: 'F9' }, steps, 'figure'],
    ['a key that nobody knows', { ...head, colour: 'red' }, steps, 'colour'],
    ['a step that is missing', head, steps.slice(1), 'steps'],
    [
      'a tool that is no command',
      head,
      [{ ...steps[0], tools: ['saw'] }, ...steps.slice(1)],
      'steps[read-the-block].tools[0]',
    ],
    [
      'a tolerance below nothing',
      head,
      [
        {
          ...steps[0],
          checks: [{ check: 'readings', tolerances: { angle: { value: -1, reason: 'ruler' } } }],
        },
        ...steps.slice(1),
      ],
      'steps[read-the-block].checks[0].tolerances.angle.value',
    ],
    ['a form of the block that is none', { ...head, form: 'round' }, steps, 'form'],
    ['a number that is no place in the course', { ...head, number: 0 }, steps, 'number'],
    [
      'a worked solution without a solver',
      head,
      [{ ...steps[0], worked: { commands: [] } }, ...steps.slice(1)],
      'steps[read-the-block].worked.by',
    ],
    [
      'a worked solution told by nothing',
      head,
      [{ ...steps[0], worked: { by: 'commands', commands: null } }, ...steps.slice(1)],
      'steps[read-the-block].worked.commands',
    ],
    [
      'a hint without a rung',
      head,
      [{ ...steps[0], hints: [{ codes: [], rungs: [] }] }, ...steps.slice(1)],
      'steps[read-the-block].hints[0].rungs',
    ],
  ])('%s', (_, lesson, parts, path) => {
    const found = problems(lesson, parts);
    expect(found.length).toBeGreaterThan(0);
    expect(found.map((problem) => problem.path)).toContain(path);
    for (const { expected, found: what } of found) expect(expected && what).toBeTruthy();
  });

  it('and never throws, whatever it is given', () => {
    for (const junk of [undefined, 0, 'x', [], {}, [null], { steps: 'all' }, Object.create(null)])
      expect(() => parseLesson(junk, [junk])).not.toThrow();
  });
});
