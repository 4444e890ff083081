import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { CHECKS } from '../../src/lib/grading/checks/index.ts';
import { wordsIn } from '../../src/lib/strings/words-in.ts';
import { CAUTIONS } from '../../src/lib/strings/cautions.ts';
import { GLOSSARY } from '../../src/lib/strings/glossary.ts';
import { canGive } from './can-give.ts';
import { parseLesson } from '../../src/lib/lessons/parse.ts';

const LESSONS = 'lessons';
const read = (path: string): unknown => JSON.parse(readFileSync(path, 'utf8'));

const lessons = readdirSync(LESSONS).map((folder) => {
  const steps = readdirSync(join(LESSONS, folder), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => ({ folder: entry.name, data: read(join(LESSONS, folder, entry.name, 'step.json')) }));
  const parsed = parseLesson(
    read(join(LESSONS, folder, 'lesson.json')),
    steps.map((step) => step.data),
  );
  return { folder, folders: steps.map((step) => step.folder), parsed };
});

it('finds lessons to look at', () => {
  expect(lessons.length).toBeGreaterThan(0);
});

describe.each(lessons)('the lesson in lessons/$folder', ({ folder, folders, parsed }) => {
  if (!('ok' in parsed)) {
    it('can be read', () => expect(parsed.problems).toEqual([]));
    return;
  }
  const lesson = parsed.ok;

  it('lies in a folder of its own id, its steps in numbered folders in order', () => {
    expect(lesson.id).toBe(folder);
    expect(folders).toEqual(lesson.steps.map((step, i) => `${String(i + 1).padStart(2, '0')}-${step.id}`));
  });

  describe.each(lesson.steps)('step $id', (step) => {
    const codes = step.hints.flatMap((ladder) => ladder.codes);

    it('is marked by checks that exist', () => {
      expect(step.checks.length).toBeGreaterThan(0);
      for (const { check } of step.checks) expect(CHECKS.has(check)).toBe(true);
    });

    it('has hints only for what its own checks can find', () => {
      const used = step.checks.map(({ check }) => check);
      for (const code of codes) {
        expect(used, code).toContain(code.split('/')[0]);
        expect(canGive(code, JSON.stringify(step)), code).toBe(true);
      }
    });

    it('has a hint for each of its checks, and none twice', () => {
      const general = step.hints.some((ladder) => ladder.codes.length === 0);
      for (const { check } of step.checks) {
        expect(general || codes.some((code) => code.startsWith(`${check}/`)), check).toBe(true);
      }
      expect(new Set(codes).size).toBe(codes.length);
    });

    it('climbs in three rungs, one sentence or two each', () => {
      expect(step.hints.length).toBeGreaterThan(0);
      for (const { rungs } of step.hints) {
        expect(rungs).toHaveLength(3);
        for (const rung of rungs) expect(rung).toMatch(/^[A-Z0-9].{10,160}[.?]$/);
      }
    });

    it('says in about 25 short lines what is done and why', () => {
      expect(step.text.length).toBeGreaterThanOrEqual(18);
      expect(step.text.length).toBeLessThanOrEqual(30);
      for (const line of step.text) expect(line.length, line).toBeLessThanOrEqual(85);
      // Plain text: no markup, and no space that nobody sees.
      for (const line of step.text) expect(line).not.toMatch(/[<>*_`\t]|\s$/);
    });

    it('uses words of the trade that can be asked', () => {
      expect(wordsIn(step.text.join(' ')).length).toBeGreaterThan(0);
    });
    it('names only cautions that have words', () => {
      for (const caution of step.cautions) expect(CAUTIONS).toHaveProperty(caution);
    });
  });

  it('cares about blades wherever paper is cut', () => {
    const cutting = lesson.steps.filter(({ tools }) =>
      tools.some((t) => ['slash', 'cut-slash', 'part-at-darts', 'separate', 'take-out'].includes(t)),
    );
    expect(cutting.length > 0 || !lesson.steps.some(({ tools }) => tools.includes('turn'))).toBe(true);
    for (const { cautions } of cutting)
      expect(cautions).toEqual(expect.arrayContaining(['scissors', 'blade']));
  });
});

it('explains each word in one plain sentence', () => {
  expect(Object.keys(GLOSSARY).length).toBeGreaterThanOrEqual(25);
  for (const sentence of Object.values(GLOSSARY)) expect(sentence).toMatch(/^[A-Z][^.]{10,200}\.$/);
});

it('says the same numbers in the texts as the rules hold', () => {
  const lesson = lessons.find(({ folder }) => folder === 'slanted-seam')?.parsed;
  if (!lesson || !('ok' in lesson)) throw new Error('the lesson cannot be read');
  const said = (id: string) =>
    lesson.ok.steps
      .find((step) => step.id === id)!
      .text.join(' ')
      .replace(/\s+/g, ' ');
  const held = (id: string, check: string) =>
    lesson.ok.steps.find((step) => step.id === id)!.checks.find((spec) => spec.check === check)!;
  const mm = (value: number) => String(Math.round(value * 10 + 1e-6) / 10);

  const passes = held('style-line', 'line-passes').numbers!;
  expect(said('style-line')).toContain(`Keep ${passes['least']} to ${passes['most']} mm`);
  expect(said('style-line')).toContain(
    `a radius of ${held('style-line', 'line-shape').numbers!['radius']} mm`,
  );
  const notches = held('notches', 'notches-placed').numbers!;
  expect(said('notches')).toContain(`each ${notches['least']} to ${notches['most']} mm`);
  expect(said('notches')).toContain(`by ${notches['asymmetry']} mm`);
  expect(notches['count']).toBe(6);
  expect(said('notches')).toContain('six are the most');
  const leftover = held('leftover', 'leftover').numbers!;
  expect(said('leftover')).toContain(
    `here ${mm(leftover['knitLimit']!)} mm (1/2 in) for a knit and ${mm(leftover['wovenLimit']!)} mm (1/8 in) for a woven`,
  );
  const widths = held('allowances', 'allowances').numbers!;
  for (const [name, inch] of [
    ['knit', '3/8'],
    ['woven', '5/8'],
    ['curve', '1/4'],
  ] as const) {
    expect(said('allowances')).toContain(`${mm(widths[name]!)} mm (${inch} in)`);
  }
  expect(said('allowances')).toContain(`up to ${mm(widths['curveMost']!)} mm`);
  expect(said('allowances')).toContain(`${widths['hemLeast']} to ${widths['hemMost']} mm`);
  expect(said('walk-the-seams')).toContain(
    `${held('walk-the-seams', 'walked').tolerances!['walk']!.value} mm (1/8 in) is still acceptable`,
  );
});
