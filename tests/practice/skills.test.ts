import { describe, expect, it } from 'vitest';
import { lessonIds, loadLesson } from '../../src/cli/load-lessons.ts';
import { FINISHINGS, METHODS, partsOf, skillId, skillOf } from '../../src/lib/practice/skills.ts';
import type { Command, CommandName } from '../../src/lib/recipe/types.ts';
import { skillName } from '../../src/lib/strings/practice.ts';

const step = (skill: string) => ({ skill, tools: [] as readonly CommandName[] });
const done = (...commands: object[]) => commands as unknown as Command[];
const SLASHED = 'waist-to-side/slash/plain';

describe('the id of a skill', () => {
  it('has the parts it was made of, whichever they are', () => {
    for (const method of METHODS)
      for (const finishing of FINISHINGS)
        expect(partsOf(skillId('waist-to-side', method, finishing))).toEqual({
          place: 'waist-to-side',
          method,
          finishing,
        });
    expect(skillId('waist-to-side', 'slash')).toBe(SLASHED);
  });

  it.each([
    'notches',
    'waist-to-side',
    'waist-to-side/fold/plain',
    'waist-to-side/slash/plain/x',
    '',
    'a/constructor/b',
  ])('%j has no parts that are known', (id) => expect(partsOf(id)).toBeUndefined());
});

describe('what a step practises', () => {
  it('is what it names', () => {
    expect(skillOf('waist-to-side', step(SLASHED))).toBe(SLASHED);
    expect(skillOf('waist-to-side', step('notches'), done({ do: 'pivot' }))).toBe('notches');
    expect(skillOf('x', step('a-skill/to/come'))).toBe('a-skill/to/come');
    expect(skillOf('constructor', step('move-dart'))).toBe('move-dart');
  });

  it('has the method that the hand took last, but for a typed angle', () => {
    expect(skillOf('x', step('a/pivot/plain'), done({ do: 'cut-slash' }, { do: 'turn' }))).toBe(
      'a/slash/plain',
    );
    expect(skillOf('x', step('a/slash/plain'), done({ do: 'cut-slash' }, { do: 'pivot' }))).toBe(
      'a/pivot/plain',
    );
    expect(skillOf('x', step('a/angle/plain'), done({ do: 'cut-slash' }, { do: 'turn' }))).toBe(
      'a/angle/plain',
    );
  });

  it('has the finishing that was made', () => {
    const of = (...commands: object[]) => skillOf('x', step('a/slash/gathers'), done(...commands));
    expect(of()).toBe('a/slash/gathers');
    expect(of({ do: 'fullness', as: 'tucks' })).toBe('a/slash/tucks');
    expect(of({ do: 'cap' })).toBe('a/slash/cap');
    expect(of({ do: 'cap' }, { do: 'back-off' })).toBe('a/slash/cap');
    expect(of({ do: 'back-off' })).toBe('a/slash/backed-off');
    expect(of({ do: 'part-at-darts' })).toBe('a/slash/princess');
  });

  it('is moving a dart twice in the main lesson, and something else in each other step', () => {
    const lesson = loadLesson('slanted-seam')!;
    const skills = lesson.steps.map((one) => skillOf(lesson.id, one));
    expect(skills.filter((one) => one === 'side-to-style-line/slash/plain')).toHaveLength(2);
    expect(new Set(skills).size).toBe(lesson.steps.length - 1);
  });

  it.each(lessonIds())('has parts that are known and a plain name, in every step of %s', (id) => {
    for (const one of loadLesson(id)!.steps) {
      const skill = skillOf(id, one);
      if (skill.includes('/')) expect(partsOf(skill), skill).toBeDefined();
      // A name, not an id.
      expect(skillName(skill)).toMatch(/^[A-Z][^/]*[a-z]$/);
    }
  });
});
