import { describe, expect, it } from 'vitest';
import { lessonIds, loadLesson } from '../../src/cli/load-lessons.ts';
import {
  DARTS,
  FINISHINGS,
  METHODS,
  partsOf,
  PLACES,
  skillId,
  skillOf,
} from '../../src/lib/practice/skills.ts';
import type { Command, CommandName } from '../../src/lib/recipe/types.ts';

const step = (...tools: string[]) => ({ skill: 'own-skill', tools: tools as CommandName[] });
const done = (...commands: object[]) => commands as unknown as Command[];

describe('the id of a skill', () => {
  it('has the parts it was made of, whichever they are', () => {
    for (const place of PLACES)
      for (const method of METHODS)
        for (const finishing of FINISHINGS)
          expect(partsOf(skillId(place, method, finishing))).toEqual({ place, method, finishing });
    expect(skillId('waist-to-side', 'slash')).toBe('waist-to-side/slash/plain');
  });

  it.each([
    'notches',
    'waist-to-side',
    'waist-to-moon/slash/plain',
    'waist-to-side/slash/plain/x',
    '',
    'constructor',
  ])('%j has no parts that are known', (id) => expect(partsOf(id)).toBeUndefined());
});

describe('what a step practises', () => {
  it('moving a dart, by the place and method of its lesson', () => {
    expect(skillOf('waist-to-side', step('draw-slash', 'cut-slash', 'turn'))).toBe(
      'waist-to-side/slash/plain',
    );
    expect(skillOf('french-dart', step('pivot'))).toBe('waist-to-low-side/pivot/plain');
  });

  it('its own skill, when it neither moves nor finishes a dart, or the lesson is not about darts', () => {
    expect(skillOf('waist-to-side', step('read'))).toBe('own-skill');
    expect(skillOf('a-lesson-to-come', step('turn'))).toBe('own-skill');
    expect(skillOf('constructor', step('turn'))).toBe('own-skill');
  });

  it('the method that the hand took last', () => {
    const both = step('draw-slash', 'cut-slash', 'turn', 'pivot');
    expect(skillOf('french-dart', both, done({ do: 'cut-slash' }, { do: 'turn' }))).toBe(
      'waist-to-low-side/slash/plain',
    );
    expect(skillOf('waist-to-side', both, done({ do: 'cut-slash' }, { do: 'pivot' }))).toBe(
      'waist-to-side/pivot/plain',
    );
  });

  it('finishing it, as it was finished', () => {
    const tools = step('fullness', 'cap', 'back-off', 'part-at-darts');
    const of = (command: object) => skillOf('gathers-tucks-ease', tools, done(command));
    expect(of({ do: 'fullness', as: 'tucks' })).toBe('waist-to-edge/slash/tucks');
    expect(of({ do: 'cap' })).toBe('waist-to-edge/slash/cap');
    expect(of({ do: 'back-off' })).toBe('waist-to-edge/slash/backed-off');
    expect(of({ do: 'part-at-darts' })).toBe('waist-to-edge/slash/gathers');
    expect(skillOf('shoulder-princess', step('part-at-darts'))).toBe('waist-to-shoulder-line/slash/princess');
  });

  it('two steps of the main lesson move a dart; the others practise what they name', () => {
    const lesson = loadLesson('slanted-seam')!;
    const skills = lesson.steps.map((one) => skillOf(lesson.id, one));
    expect(skills.filter((one) => one === 'side-to-style-line/slash/plain')).toHaveLength(2);
    expect(new Set(skills).size).toBe(lesson.steps.length - 1);
  });

  it('every lesson with a step that moves a dart is in the list', () => {
    for (const id of lessonIds()) {
      const moves = loadLesson(id)!.steps.some(({ tools }) =>
        (tools as readonly string[]).some((tool) => ['turn', 'pivot'].includes(tool)),
      );
      if (moves) expect(Object.keys(DARTS), id).toContain(id);
    }
  });
});
