import { describe, expect, it } from 'vitest';
import { lessonIds, loadLesson } from '../../src/cli/load-lessons.ts';
import { drillLesson } from '../../src/lib/lessons/drills/lesson.ts';
import { drillSkill, stepSkill } from '../../src/lib/lessons/drills/skill.ts';
import { stepsOf } from '../../src/lib/lessons/drills/steps.ts';
import { EXERCISES, newest } from '../../src/lib/lessons/drills/types.ts';
import { variantOf } from '../../src/lib/lessons/drills/variant.ts';
import { workedLesson } from '../../src/lib/lessons/worked/index.ts';
import { drillFor } from '../../src/lib/practice/drills.ts';
import { DRILL_SKILLS, drillsOf, exerciseOf } from '../../src/lib/practice/drill-skills.ts';
import { isKnownSkill, widerSkill } from '../../src/lib/practice/known-skills.ts';
import { skillOf } from '../../src/lib/practice/skills.ts';
import { drillWords } from '../../src/lib/strings/drills.ts';
import { skillName } from '../../src/lib/strings/practice.ts';

/** A name, not an id. */
const NAME = /^[A-Z][^/]*[a-z]$/;

describe('every step practises a skill that is known: dart place, method and finishing, or one of the hand', () => {
  it.each(lessonIds())('in the lesson %s, as named and as it is worked', (id) => {
    const lesson = loadLesson(id)!;
    const { commands } = workedLesson(lesson, lesson.fabrics[0]!);
    for (const step of lesson.steps) {
      const own = commands.filter((one) => one.step === step.id);
      for (const skill of [skillOf(id, step), skillOf(id, step, own)]) {
        expect(isKnownSkill(skill), `${step.id}: ${skill}`).toBe(true);
        expect(skillName(skill)).toMatch(NAME);
      }
    }
  });

  it.each(EXERCISES)('in 200 drills of the kind %s, as named and as they are worked', (exercise) => {
    const words = drillWords('mm');
    for (let seed = 0; seed < 200; seed++) {
      const variant = variantOf(newest({ exercise, seed, fabric: 'knit', band: 'usual', hints: 0 }));
      const lesson = drillLesson(variant, words);
      const { commands } = workedLesson(lesson, 'knit');
      const practised = lesson.steps.map((step) => {
        const own = commands.filter((one) => one.step === step.id);
        const skill = skillOf(lesson.id, step, own);
        expect(isKnownSkill(skill), `${step.id}: ${skill}`).toBe(true);
        expect(skillName(skill)).toMatch(NAME);
        // What was done rightly is what the step names, so that it counts for what was due.
        expect(skill).toBe(step.skill);
        return skill;
      });
      // The last step is what the drill is for; a line is cut apart after that, and what is left over is dealt with; a block that was read is opened out.
      const after = ['separate', 'leftover', 'open-out'];
      // Pieces made ready are a skill of all their steps together, and of none of them alone.
      if (exercise !== 'ready')
        expect(practised.filter((skill) => !after.includes(skill)).at(-1)).toBe(drillSkill(variant));
      expect(exerciseOf(drillSkill(variant))).toBe(exercise);
    }
  });

  it('what is no skill of today is not known', () => {
    for (const skill of [
      '',
      'moving',
      'waist-to-moon/slash/plain',
      'waist-to-side/fold/plain',
      'constructor',
    ])
      expect(isKnownSkill(skill)).toBe(false);
    for (const skill of DRILL_SKILLS) expect(isKnownSkill(skill)).toBe(true);
  });
});

describe('the drills in which a skill of the course is practised', () => {
  const course = [
    ...new Set(lessonIds().flatMap((id) => loadLesson(id)!.steps.map((step) => skillOf(id, step)))),
  ].sort();
  const drilled = course.filter((skill) => drillsOf(skill).length > 0);

  it('have a step of just that skill, or of the wider place', () => {
    for (const skill of drilled)
      for (const wanted of drillsOf(skill)) {
        const drill = drillFor({ skill: wanted, level: 0 }, 7, { fabric: 'woven', hints: 3 })!;
        const variant = variantOf(drill);
        const steps = stepsOf(variant).own.map((id) => stepSkill(variant, id));
        expect(steps, `${skill} in ${wanted}`).toContain(widerSkill(skill) ?? skill);
      }
  });

  it('are there for all but what only lessons have', () => {
    expect(course.filter((skill) => !drilled.includes(skill))).toEqual([
      'asymmetric/slash/plain',
      'close-and-overlay',
      'waist-to-near-line/slash/ease',
    ]);
  });
});
