import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { lessonIds, loadLesson } from '../../src/cli/load-lessons.ts';
import { gradeLesson } from '../../src/lib/grading/grade.ts';
import { EXERCISES, type Drill, type ExerciseId } from '../../src/lib/lessons/drills/types.ts';
import { variantOf } from '../../src/lib/lessons/drills/variant.ts';
import { workedLesson } from '../../src/lib/lessons/worked/index.ts';
import { canFind } from '../../src/lib/practice/finds.ts';
import { isolating, soughtAs } from '../../src/lib/practice/isolate.ts';
import { chanceOf, isDrilled } from '../../src/lib/practice/second-chance.ts';
import { checksOf, secondDrill } from '../../src/lib/practice/second-drill.ts';
import { partsOf, skillOf } from '../../src/lib/practice/skills.ts';
import type { Command } from '../../src/lib/recipe/types.ts';
import { FINDINGS } from '../../src/lib/strings/findings.ts';
import { attemptOf, lessonOf } from '../lessons/drills/support.ts';
import { T0, wrong } from './history.ts';

/*
 * Every code that a step of a lesson or of a drill can give has a drill that really looks for it, or a reason why none does. What drills look for
 * is taken from their rules and from marks of attempts, not from the list under test.
 */
const drillOf = (exercise: ExerciseId, seed: number): Drill => ({
  exercise,
  seed,
  fabric: seed % 2 ? 'knit' : 'woven',
  band: 'usual',
  hints: 1,
});
const SEEDS = Array.from({ length: 24 }, (_, seed) => seed);
const drills = EXERCISES.flatMap((exercise) => SEEDS.map((seed) => drillOf(exercise, seed))).map((drill) => ({
  drill,
  lesson: lessonOf(variantOf(drill)),
}));

/** Codes by check, as the sentences have them: each code of a check has one (`tests/strings/complete.test.ts`). */
const codes = Object.keys(FINDINGS).filter((code) => !code.startsWith('paper/'));
/** Each check with the skills of the steps that are marked by it. */
const skills = new Map<string, Set<string>>();
for (const lesson of [...lessonIds().map((id) => loadLesson(id)!), ...drills.map(({ lesson }) => lesson)])
  for (const step of lesson.steps)
    for (const { check } of step.checks)
      skills.set(check, (skills.get(check) ?? new Set()).add(skillOf(lesson.id, step)));
const cases = codes.flatMap((code) =>
  [...(skills.get(code.split('/')[0]!) ?? [])].map((skill) => [code, skill] as const),
);

describe('what a check looks for', () => {
  // Worked rightly, nothing done, stopped anywhere, one line too many, each command left out: all that the drills then find or miss.
  const seen = new Map<string, Set<string>>();
  for (const { drill, lesson } of drills.filter(
    ({ drill: { exercise, seed } }) => seed < 8 || exercise === 'block',
  )) {
    const { commands } = workedLesson(lesson, drill.fabric);
    const extra = commands.flatMap((command): Command[] =>
      command.do === 'draw-slash'
        ? [command, { ...command, slash: 'one-more', from: { on: 'centre-front', at: 0.4 } } as Command]
        : [command],
    );
    const tries = [commands, extra, ...commands.map((_, i) => commands.filter((__, k) => k !== i))];
    for (const some of [...tries, ...commands.map((_, i) => commands.slice(0, i))])
      gradeLesson(lesson, attemptOf(lesson, some)).forEach((mark) => {
        const { checks } = lesson.steps.find(({ id }) => id === mark.step)!;
        for (const { code } of mark.findings) {
          const by = checks.filter((spec) => canFind(spec, code)).map((spec) => JSON.stringify(spec));
          seen.set(code, new Set([...(seen.get(code) ?? []), ...(by.length > 0 ? ['looked for'] : ['not'])]));
        }
      });
  }

  it('is told of every finding that marks of drills have', () => {
    expect(seen.size).toBeGreaterThan(30);
    for (const [code, how] of seen) expect([code, ...how]).toEqual([code, 'looked for']);
  });

  it('and nothing is told that is not found, but for what takes a special hand', () => {
    const told = codes.filter((code) =>
      drills.some(({ lesson }) =>
        lesson.steps.some(({ checks }) => checks.some((spec) => canFind(spec, code))),
      ),
    );
    const unseen = told.filter((code) => !seen.has(code));
    // A stroke of the hand, a line that opens at its other end, an edge lost by cutting, a knit that is trimmed, a notch after the cut, a grainline
    // beside its piece, a piece that was turned as a whole: no command left out leads there.
    expect(unseen.sort()).toEqual([
      'dart-closed/end',
      'grain/on-piece',
      'grain/void',
      'leftover/trim-not-needed',
      'line-shape/kinks',
      'notches-placed/after-cutting',
      'overlaid/coverage',
    ]);
    for (const code of unseen)
      expect(readFileSync(`src/lib/grading/checks/${code.split('/')[0]}.ts`, 'utf8')).toContain(`'${code}'`);
  });
});

describe('every code in every skill that is marked by it', () => {
  it('finds many', () => expect(cases.length).toBeGreaterThan(150));

  it.each(cases)('%s in %s', (code, skill) => {
    const mark = wrong(T0, { skill, codes: [code] });
    const chance = chanceOf([mark], mark.id, code)!;
    if (!isDrilled(chance)) throw new Error('there should be a drill');
    const { drill } = secondDrill(chance, [mark])!;
    const sought = soughtAs(code, skill);
    expect(checksOf(drill).some((spec) => canFind(spec, sought))).toBe(true);
    // One step and no more, by the learner's own method where it is about a move.
    const lesson = lessonOf(variantOf(drill));
    expect(lesson.steps).toHaveLength(1);
    const method = partsOf(skill)?.method === 'pivot' ? 'pivot' : 'slash';
    if (/^(slash-drawn|dart-moved)\//.test(sought))
      expect(drill.exercise === 'pivot').toBe(method === 'pivot');
    // All before it is right, and nothing of it is done.
    const { start, commands } = workedLesson(lesson, drill.fabric);
    const given = new Set(lesson.given?.map(({ id }) => id));
    const begun = attemptOf(
      lesson,
      commands.filter(({ step }) => given.has(step!)),
    );
    expect(start.pieces.length).toBeGreaterThan(0);
    for (const { verdict } of gradeLesson({ steps: lesson.given ?? [] }, begun))
      expect(verdict).toBe('accepted');
    expect(gradeLesson(lesson, begun).map(({ verdict }) => verdict)).toEqual(['notReady']);
    expect(gradeLesson(lesson, attemptOf(lesson, commands)).map(({ verdict }) => verdict)).toEqual([
      'accepted',
    ]);
  });

  it('what a proof shows is looked for where it was made, in the same way for every skill', () => {
    expect(soughtAs('angle-kept/sum', 'close-and-overlay')).toBe('darts-extended/tip');
    expect(soughtAs('overlaid/fit', 'close-and-overlay')).toBe('dart-moved/pivot');
    expect(soughtAs('overlaid/fit', 'separate')).toBe('dart-closed/pivot');
    expect(soughtAs('separated/area', 'separate')).toBe('separated/area');
  });

  it('a code of another version has none', () => {
    expect(isolating('a-check-gone/what', 'a-skill')).toBeUndefined();
    expect(isolating('constructor', 'a-skill')).toBeUndefined();
  });

  it('keeps place, method and finishing where there are drills of them', () => {
    const of = (code: string, skill: string) => {
      const by = isolating(code, skill);
      return by && [by.exercise, by.step, ...by.skills];
    };
    expect(of('dart-moved/opening', 'waist-to-neckline/slash/plain')).toEqual([
      'slash',
      'move',
      'waist-to-neckline/slash/plain',
    ]);
    expect(of('dart-moved/pivot', 'waist-to-mid-armhole/pivot/plain')).toEqual([
      'pivot',
      'pivot',
      'waist-to-armhole/pivot/plain',
    ]);
    expect(of('slash-drawn/place', 'waist-to-shoulder-line/slash/princess')).toEqual([
      'slash',
      'slash-line',
      'waist-to-shoulder/slash/plain',
    ]);
    expect(of('dart-moved/opening', 'waist-to-cluster/slash/plain')).toEqual([
      'split',
      'move',
      'waist-to-two/slash/plain',
    ]);
    expect(of('dart-finished/cap', 'waist-to-shoulder/slash/cap')).toEqual([
      'finish',
      'cap',
      'waist/drawn/cap',
    ]);
    expect(of('fullness/tucks', 'side-to-edge/slash/tucks')).toEqual([
      'fullness',
      'draw-over',
      'side-to-edge/slash/tucks',
    ]);
    expect(of('labels/name', 'label-grain')).toEqual(['ready', 'label-and-grain', 'make-ready']);
    expect(of('opened-out/mirror', 'open-out')).toEqual(['block', 'open-out', 'read-block']);
  });
});
