import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drillId } from '../../src/lib/lessons/drills/lesson.ts';
import { SEEDS } from '../../src/lib/lessons/drills/link.ts';
import { drillSkill } from '../../src/lib/lessons/drills/skill.ts';
import { BANDS, EXERCISES, newest, type Drill } from '../../src/lib/lessons/drills/types.ts';
import { variantOf } from '../../src/lib/lessons/drills/variant.ts';
import { nextDrill } from '../../src/lib/practice/boundary.ts';
import { DRILL_SKILLS, drillCandidates, drillOfId, levelOf } from '../../src/lib/practice/drill-skills.ts';
import { drillFor } from '../../src/lib/practice/drills.ts';

const rest = { fabric: 'woven', hints: 3 } as const;
const drills: fc.Arbitrary<Drill> = fc.record({
  exercise: fc.constantFrom(...EXERCISES),
  seed: fc.nat(SEEDS - 1),
  fabric: fc.constantFrom('woven' as const, 'knit' as const),
  band: fc.constantFrom(...BANDS),
  hints: fc.nat(3),
});

describe('drills of a skill', () => {
  it('the list of skills is just what the generator makes', () => {
    // The generator is the outside: 400 seeds of each exercise.
    const made = new Set<string>();
    for (const exercise of EXERCISES)
      for (let seed = 0; seed < 400; seed++)
        made.add(drillSkill(variantOf(newest({ exercise, seed, band: 'usual', ...rest }))));
    expect([...made].sort()).toEqual([...DRILL_SKILLS].sort());
  });

  it('any skill from any seed, at the level that was asked for', () => {
    fc.assert(
      fc.property(fc.constantFrom(...drillCandidates()), fc.nat(SEEDS - 1), (wanted, seed) => {
        const drill = drillFor(wanted, seed, rest)!;
        expect(drillSkill(variantOf(drill))).toBe(wanted.skill);
        expect(levelOf(drill)).toBe(wanted.level);
        expect(drill.seed).toBeLessThan(SEEDS);
        expect(drillFor(wanted, seed, rest)).toEqual(drill);
      }),
    );
  });

  it('there is none of a skill that only lessons teach', () => {
    for (const skill of ['notches', 'waist-to-low-side/pivot/plain', 'waist-to-side/pivot/cap', ''])
      expect(drillFor({ skill, level: 0 }, 1, rest)).toBeUndefined();
  });

  it('is told from its id', () => {
    fc.assert(
      fc.property(drills, (drill) => {
        expect(drillOfId(drillId(variantOf(drill)))).toEqual(drill);
      }),
    );
    for (const id of ['waist-to-side', 'drill-', 'drill-slash-1-woven-usual', ''])
      expect(drillOfId(id)).toBeUndefined();
  });

  it('a beginner gets a plain one, and each success leads to a harder one in the end', () => {
    const first = nextDrill(drillCandidates(), [])!;
    expect(first.level).toBe(0);
    const { skill } = first;
    const better = Array.from({ length: 12 }, () => ({ skill, level: 0, score: 1 as const }));
    expect(nextDrill(drillCandidates(), better, new Set([skill]))!.level).toBe(1);
    const worse = Array.from({ length: 4 }, () => ({ skill, level: 0, score: 0 as const }));
    expect(nextDrill(drillCandidates(), worse, new Set([skill]))!.level).toBe(-1);
  });
});
