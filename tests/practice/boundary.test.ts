import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  abilityOf,
  BEGINNER,
  chanceOf,
  learnt,
  nextDrill,
  outcomesOf,
  TARGET,
  type Candidate,
  type Outcome,
} from '../../src/lib/practice/boundary.ts';
import { mark, MINUTE, T0, wrong } from './history.ts';

/*
 * Outside: a simulated learner after the Rasch model (G. Rasch, 1960; memory), with an ability the code under test does not know. The chance
 * numbers come from a generator of the tests.
 */
function chance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    // mulberry32 (memory)
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const LEVELS = Array.from({ length: 25 }, (_, i) => -3 + i / 4);
const skills = ['waist-to-side/slash/plain', 'waist-to-shoulder/slash/plain', 'waist-to-side/pivot/cap'];
const all: readonly Candidate[] = skills.flatMap((skill) => LEVELS.map((level) => ({ skill, level })));

describe('drills lie at the boundary of what the learner can do', () => {
  it.each([
    [0, 0, 0],
    [1.4, 1.4, 1.4],
    [3, 2, 1],
    [4, 0, -1],
  ])('a learner of abilities %d, %d and %d succeeds in four of five', (...abilities) => {
    const next = chance(7);
    let right = 0;
    const outcomes: Outcome[] = [];
    const perSkill = new Map<string, number>();
    for (let i = 0; i < 900; i += 1) {
      // What is due decides the skill in turn, so that each is held to the target.
      const skill = skills[i % 3]!;
      const drill = nextDrill(all, outcomes, new Set([skill]))!;
      expect(drill.skill).toBe(skill);
      const ability = abilities[i % 3]!;
      const score = next() < 1 / (1 + Math.exp(drill.level - ability)) ? 1 : 0;
      outcomes.push({ ...drill, score });
      if (i < 300) continue;
      right += score;
      perSkill.set(skill, (perSkill.get(skill) ?? 0) + score);
    }
    expect(Math.abs(right / 600 - TARGET)).toBeLessThan(0.05);
    // 200 drills each: the noise of counting alone is 0.03.
    for (const count of perSkill.values()) expect(Math.abs(count / 200 - TARGET)).toBeLessThan(0.09);
  });

  it('a success never lowers what is thought of any skill, a failure never raises it', () => {
    const outcome = fc.record({
      skill: fc.constantFrom(...skills),
      level: fc.constantFrom(...LEVELS),
      score: fc.constantFrom(0 as const, 0.5 as const, 1 as const),
    });
    fc.assert(
      fc.property(fc.array(outcome, { maxLength: 40 }), outcome, (past, last) => {
        const before = abilityOf(past);
        const [up, down] = [learnt(before, { ...last, score: 1 }), learnt(before, { ...last, score: 0 })];
        for (const one of all) {
          expect(chanceOf(up, one)).toBeGreaterThanOrEqual(chanceOf(before, one));
          expect(chanceOf(down, one)).toBeLessThanOrEqual(chanceOf(before, one));
        }
      }),
    );
  });

  it('a beginner gets the plain drill', () => {
    expect(chanceOf(BEGINNER, { skill: 'new', level: 0 })).toBeCloseTo(TARGET, 12);
    expect(nextDrill(all, [])).toEqual({ skill: [...skills].sort()[0], level: 0 });
    expect(nextDrill([], [])).toBeUndefined();
  });

  it('of what is alike, the skill that was practised longest ago', () => {
    const past = skills.flatMap((skill) => [
      { skill, level: 0, score: 1 as const },
      { skill, level: 0, score: 0 as const },
    ]);
    expect(nextDrill(all, past)!.skill).toBe(skills[0]);
  });
});

describe('outcomes from what happened', () => {
  it('right at once 1, with help or at a later try a half, wrong or shown 0, unfinished nothing', () => {
    const at = (i: number) => T0 + i * 1000 * MINUTE;
    const log = [
      mark(at(0)),
      mark(at(1), { hints: 1 }),
      wrong(at(2)),
      mark(at(2) + MINUTE),
      wrong(at(3)),
      mark(at(4), { worked: true, level: 2 }),
      mark(at(5), { verdict: 'notReady' }),
    ];
    expect(outcomesOf(log).map(({ score }) => score)).toEqual([1, 0.5, 0.5, 0, 0]);
    expect(outcomesOf(log).map(({ level }) => level)).toEqual([0, 0, 0, 0, 2]);
  });
});
