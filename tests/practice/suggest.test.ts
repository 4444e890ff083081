import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { abilityOf, chanceOf, outcomesOf, TARGET } from '../../src/lib/practice/boundary.ts';
import { DRILL_SKILLS, drillCandidates, exerciseOf } from '../../src/lib/practice/drill-skills.ts';
import { dueOn } from '../../src/lib/practice/due.ts';
import { skillStates } from '../../src/lib/practice/schedule.ts';
import { suggest } from '../../src/lib/practice/suggest.ts';
import { mergeLogs } from '../../src/lib/progress/merge.ts';
import type { ProgressEvent } from '../../src/lib/progress/events.ts';
import { suggestionLead, suggestionReason } from '../../src/lib/strings/suggestion.ts';
import { DAY, mark, T0, wrong } from './history.ts';

const utcDay = (at: number): number => Math.floor(at / DAY);
const at = (now: number, ...events: ProgressEvent[]) => {
  const log = mergeLogs(events);
  return { ...suggest(log, dueOn(skillStates(log).values(), now, utcDay)), log };
};
/** Each drill is another exercise: its marks are an occasion of their own. */
const drill = (i: number) => ({ exercise: { kind: 'drill' as const, id: `drill-${i}`, content: 1 } });
const SLASH = 'waist-to-side/slash/plain';

describe('what the practice room suggests', () => {
  it('the first move of the course to who has done nothing, or nothing that is drilled', () => {
    for (const events of [[], [mark(T0, { skill: 'notches', step: 'notches' })]]) {
      const { candidate, why } = at(T0, ...events);
      expect(candidate).toEqual({ skill: SLASH, level: 0 });
      expect(why).toEqual({ kind: 'first' });
    }
  });

  it('what is due before anything else, with its reason', () => {
    const events = [
      mark(T0, { hints: 2, skill: 'waist-to-edge/slash/tucks' }),
      mark(T0, { skill: 'notches' }),
    ];
    const { candidate, why, chance } = at(T0 + 60 * DAY, ...events);
    expect(candidate.skill).toBe('waist-to-edge/slash/tucks');
    expect(why).toMatchObject({ kind: 'due', due: { reason: 'helped', hints: 2, since: 60 } });
    expect(suggestionLead(why)).toBe('Due');
    expect(suggestionReason(why, chance)).toMatch(/^Because: last done 60 days ago with 2 hints\./);
  });

  it('a drill that has what is due in a step of it, or at a wider place', () => {
    const pivoted = mark(T0, { skill: 'waist-to-mid-armhole/pivot/plain', step: 'pivot' });
    for (const events of [[pivoted], [mark(T0, { skill: 'working-dart', step: 'working-dart' })]]) {
      const { candidate, why } = at(T0 + 60 * DAY, ...events);
      expect(exerciseOf(candidate.skill)).toBe('pivot');
      expect(why).toMatchObject({ kind: 'due', due: { skill: events[0]!.skill } });
    }
    // What only lessons have is told beside the drill.
    const { why, chance } = at(T0 + 60 * DAY, mark(T0, { skill: 'close-and-overlay', step: 'prove' }));
    expect(why.kind).toBe('first');
    expect(suggestionReason(why, chance)).not.toContain('nothing of yours');
    expect(suggestionLead({ kind: 'new' }, 1)).toBe('Next');
  });

  it('of several that are due the one nearest to four in five, whatever else there is', () => {
    // Computed apart: the chance of every candidate of the due skills.
    const some = fc.uniqueArray(fc.record({ skill: fc.constantFrom(...DRILL_SKILLS), right: fc.boolean() }), {
      minLength: 1,
      maxLength: 12,
      selector: ({ skill }) => skill,
    });
    fc.assert(
      fc.property(some, (done) => {
        const events = done.map(({ skill, right }, i) =>
          (right ? mark : wrong)(T0 + i * 1000, { skill, ...drill(i) }),
        );
        const { candidate, why, chance, log } = at(T0 + 400 * DAY, ...events);
        expect(why.kind).toBe('due');
        expect(done.map(({ skill }) => skill)).toContain(candidate.skill);
        const ability = abilityOf(outcomesOf(log));
        const off = (one: typeof candidate) => Math.abs(chanceOf(ability, one) - TARGET);
        for (const one of drillCandidates())
          if (done.some(({ skill }) => skill === one.skill))
            expect(off(candidate)).toBeLessThanOrEqual(off(one) + 0.011);
        expect(chance).toBe(chanceOf(ability, candidate));
      }),
    );
  });

  it('when nothing is due, only kinds that were got right and the next one', () => {
    const first = at(T0, wrong(T0));
    expect(exerciseOf(first.candidate.skill)).toBe('slash');
    const kinds = new Set<string>();
    const events: ProgressEvent[] = [];
    // A learner who gets everything right is led through all kinds, one new kind after the other.
    for (let i = 0; i < 200; i++) {
      const { candidate, why } = at(T0, ...events);
      expect(why.kind).not.toBe('due');
      kinds.add(exerciseOf(candidate.skill)!);
      events.push(mark(T0 + i * 1000, { skill: candidate.skill, level: candidate.level, ...drill(i) }));
    }
    expect([...kinds].sort()).toEqual([
      'angle',
      'block',
      'finish',
      'fullness',
      'join',
      'line',
      'parallel',
      'pivot',
      'princess',
      'several',
      'slash',
      'split',
    ]);
    expect([...kinds].slice(0, 5)).toEqual(['slash', 'pivot', 'block', 'angle', 'split']);
  });

  it('a new one says that it is new, a known one how it would go', () => {
    const one = at(T0, mark(T0));
    expect(one.why.kind).toBe('new');
    expect(suggestionReason(one.why, one.chance)).toMatch(
      /^Because: it is new to you\. .* about 8 times in 10/,
    );
    expect(suggestionReason({ kind: 'boundary' }, 0.62)).toContain('about 6 times in 10');
    expect(suggestionLead({ kind: 'boundary' })).toBe('Nothing is due. Next');
  });
});
