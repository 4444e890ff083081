import fc from 'fast-check';
import { createEmptyCard, default_w, FSRS6_DEFAULT_DECAY, fsrs, FSRSVersion, Rating } from 'ts-fsrs';
import { describe, expect, it } from 'vitest';
import { dueOn, nextDue } from '../../src/lib/practice/due.ts';
import { occasionsOf } from '../../src/lib/practice/occasions.ts';
import { lastOf, recallAt, skillStates } from '../../src/lib/practice/schedule.ts';
import type { ProgressEvent } from '../../src/lib/progress/events.ts';
import { mergeLogs } from '../../src/lib/progress/merge.ts';
import { credit, DAY, events, hint, HOUR, mark, MINUTE, T0, worked, wrong } from './history.ts';

/*
 * Outside source for intervals: the library itself (ts-fsrs 5.4.2), called here in its own way, one card and one review after the
 * other. For the curve: the power forgetting curve of FSRS-6, R(t, S) = (1 + f t / S)^-d with f = 0.9^(-1/d) - 1, so that R(S, S) = 0.9.
 * The form with f and d: read in the library's code (`forgetting_curve`, `computeDecayFactor`); that FSRS-6 published it so: memory.
 */
const SKILL = 'waist-to-side/slash/plain';
const stateOf = (...log: ProgressEvent[]) => skillStates(mergeLogs(log)).get(SKILL)!;

describe('intervals are those of the library', () => {
  it('is the version that was read', () => expect(FSRSVersion).toBe('v5.4.2 using FSRS-6.0'));

  it('for any row of ratings and pauses', () => {
    const library = fsrs({
      request_retention: 0.9,
      enable_fuzz: false,
      enable_short_term: false,
      maximum_interval: 365,
    });
    const step = fc.record({
      how: fc.constantFrom('again', 'hard', 'good'),
      hours: fc.integer({ min: 2, max: 2000 }),
    });
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 12 }), (steps) => {
        let at = T0;
        let card = createEmptyCard(new Date(at));
        const log = steps.map(({ how, hours }) => {
          at += hours * HOUR;
          const grade = { again: Rating.Again, hard: Rating.Hard, good: Rating.Good } as const;
          ({ card } = library.next(
            card,
            new Date(at),
            grade[how as keyof typeof grade] as Rating.Again | Rating.Hard | Rating.Good,
          ));
          if (how === 'again') return wrong(at);
          return mark(at, { hints: how === 'hard' ? 1 : 0 });
        });
        const state = stateOf(...log);
        expect(state.due).toBe(card.due.getTime());
        expect(state.stability).toBe(card.stability);
        expect(state.difficulty).toBe(card.difficulty);
      }),
    );
  });

  it('the better it went, the later it comes again, and never later than in a year', () => {
    // The library keeps the four ratings a day apart, also at the top: up to two days beyond the maximum (read in its code).
    const after = (log: ProgressEvent[]) => stateOf(...log).due - T0;
    const [again, hard, good] = [[wrong(T0)], [mark(T0, { hints: 1 })], [mark(T0)]].map(after);
    expect(again).toBe(DAY);
    expect(hard!).toBeGreaterThan(again!);
    expect(good!).toBeGreaterThan(hard!);
    const long = Array.from({ length: 12 }, (_, i) => mark(T0 + i * 300 * DAY));
    expect(stateOf(...long).due).toBeLessThanOrEqual(T0 + (11 * 300 + 367) * DAY);
  });

  it('takes the learner’s own usual time: quick, exact work comes again later than slow', () => {
    const past = [0, 10, 20].map((day) => mark(T0 + day * DAY));
    const quick = stateOf(...past, mark(T0 + 40 * DAY, { error: 0.1, seconds: 50 }));
    const slow = stateOf(...past, mark(T0 + 40 * DAY, { error: 0.1, seconds: 500 }));
    expect([lastOf(quick).rating, lastOf(slow).rating]).toEqual(['easy', 'hard']);
    expect(quick.due).toBeGreaterThan(slow.due);
  });
});

describe('the forgetting curve', () => {
  it('is the published one', () => {
    const state = stateOf(mark(T0));
    const d = FSRS6_DEFAULT_DECAY;
    expect(default_w[20]).toBe(d);
    const f = Math.pow(0.9, -1 / d) - 1;
    for (const days of [0, 0.5, 1, 3, 10, 100, 1000]) {
      const published = Math.pow(1 + (f * days) / state.stability, -d);
      // The library rounds the factor and the result to eight places.
      expect(recallAt(state, T0 + days * DAY)).toBeCloseTo(published, 6);
    }
    expect(recallAt(state, T0 + state.stability * DAY)).toBeCloseTo(0.9, 6);
  });

  it('is 1 for a clock that was set back', () => expect(recallAt(stateOf(mark(T0)), T0 - DAY)).toBe(1));
});

describe('marks are put together into occasions', () => {
  const of = (...log: ProgressEvent[]) => occasionsOf(mergeLogs(log));

  it('hints that were taken after a mark that was not right count, though nothing was marked again', () => {
    const [left] = of(wrong(T0), hint(T0 + MINUTE, 1), hint(T0 + 2 * MINUTE, 2));
    expect(left).toMatchObject({ hints: 2, result: 'needsWork' });
    // Once it is right they no longer helped.
    const [done] = of(mark(T0, { hints: 1 }), hint(T0 + MINUTE, 2));
    expect(done).toMatchObject({ hints: 1, result: 'accepted' });
    expect(of(hint(T0, 1))).toEqual([]);
  });

  it('several tries at a step are one occasion, decided when it is right', () => {
    const [one, ...more] = of(wrong(T0), wrong(T0 + 5 * MINUTE), mark(T0 + 9 * MINUTE, { seconds: 30 }));
    expect(more).toEqual([]);
    expect(one).toMatchObject({ result: 'accepted', wrong: 2, seconds: 150, at: T0 + 9 * MINUTE });
    expect(one!.mistakes).toEqual(['dart-moved/residual']);
  });

  it('what is checked again after it was right is no further practice', () => {
    const log = [mark(T0), mark(T0 + MINUTE, { error: 0 }), wrong(T0 + 2 * MINUTE)];
    expect(of(...log)).toHaveLength(1);
    expect(stateOf(...log).due).toBe(stateOf(log[0]!).due);
  });

  it('after more than an hour it is taken up anew', () => {
    expect(of(wrong(T0), mark(T0 + HOUR))).toHaveLength(1);
    expect(of(wrong(T0), mark(T0 + HOUR + 1))).toHaveLength(2);
  });

  it('another drill is another occasion, even a minute later', () => {
    const drill = (seed: number) => ({
      exercise: { kind: 'drill' as const, id: `waist-to-side~${seed}`, content: 1 },
    });
    expect(of(mark(T0, drill(1)), mark(T0 + MINUTE, drill(2)))).toHaveLength(2);
  });

  it('unfinished work is not wrong, and gives nothing to rate', () => {
    const log = [mark(T0, { verdict: 'notReady', codes: ['dart-moved/slashed'] })];
    expect(of(...log)[0]).toMatchObject({ result: 'notReady', wrong: 0 });
    expect(skillStates(log).size).toBe(0);
  });

  it('the worked solution that was opened in between counts, though the mark does not know of it', () => {
    expect(of(wrong(T0), worked(T0 + MINUTE), mark(T0 + 2 * MINUTE))[0]!.worked).toBe(true);
    expect(of(mark(T0), worked(T0 + MINUTE))[0]!.worked).toBe(false);
  });

  it('a second chance restores the credit, once all mistakes are made good', () => {
    const bad = wrong(T0, { codes: ['dart-moved/pivot', 'dart-moved/residual'] });
    const one = credit(T0 + DAY, bad, 'dart-moved/pivot');
    const two = credit(T0 + DAY, bad, 'dart-moved/residual');
    expect(lastOf(stateOf(bad)).rating).toBe('again');
    expect(lastOf(stateOf(bad, one)).rating).toBe('again');
    expect(lastOf(stateOf(bad, one, two)).rating).toBe('hard');
  });
});

describe('what is due', () => {
  const utcDay = (at: number): number => Math.floor(at / DAY);
  const due = (now: number, ...log: ProgressEvent[]) =>
    dueOn(skillStates(mergeLogs(log)).values(), now, utcDay);

  it('nothing on the day itself; what went wrong on the next, from its first hour', () => {
    expect(due(T0 + HOUR, wrong(T0))).toEqual([]);
    const next = Date.UTC(2026, 2, 3, 0, 1);
    expect(due(next, wrong(T0))).toMatchObject([{ reason: 'went-wrong', since: 1, overdue: 0 }]);
  });

  it('says why: helped with how many hints, shown, fading, and for how long', () => {
    expect(due(T0 + 90 * DAY, mark(T0, { hints: 2 }))).toMatchObject([{ reason: 'helped', hints: 2 }]);
    expect(due(T0 + 90 * DAY, mark(T0, { worked: true }))).toMatchObject([{ reason: 'shown' }]);
    const state = stateOf(mark(T0));
    const [one] = due(state.due + 3 * DAY, mark(T0));
    expect(one).toMatchObject({ reason: 'fading', overdue: 3 });
    expect(one!.recall).toBe(recallAt(state, state.due + 3 * DAY));
  });

  it('what fades most comes first', () => {
    const list = due(T0 + 60 * DAY, mark(T0), wrong(T0, { skill: 'notches', step: 'notches' }));
    expect(list.map(({ skill }) => skill)).toEqual(['notches', SKILL]);
  });

  it('a drill to the wider place counts for a lesson’s narrower one, once that was practised', () => {
    const narrow = mark(T0, { skill: 'waist-to-mid-armhole/pivot/plain' });
    const wide = { skill: 'waist-to-armhole/pivot/plain', step: 'pivot' };
    expect([...skillStates([mark(T0, wide)]).keys()]).toEqual([wide.skill]);
    const later = T0 + 30 * DAY;
    const both = skillStates([narrow, mark(later, wide)]);
    expect(lastOf(both.get(narrow.skill)!).occasion.at).toBe(later);
    expect(both.get(narrow.skill)!.due).toBeGreaterThan(skillStates([narrow]).get(narrow.skill)!.due);
    expect(lastOf(skillStates([mark(T0, wide), { ...narrow, at: later }]).get(wide.skill)!).occasion.at).toBe(
      T0,
    );
  });

  it('and when the next comes', () => {
    expect(nextDue([])).toBeUndefined();
    expect(nextDue(skillStates([wrong(T0)]).values())).toBe(T0 + DAY);
  });
});

it('the same history gives the same state, bit for bit, from whatever pieces it is put together', () => {
  fc.assert(
    fc.property(events, fc.array(fc.boolean(), { minLength: 30, maxLength: 30 }), (all, here) => {
      const one = mergeLogs(all.filter((_, i) => here[i]));
      const two = mergeLogs(all.filter((_, i) => !here[i] || i % 3 === 0));
      expect([...skillStates(mergeLogs(two, one))]).toEqual([...skillStates(mergeLogs(one, two))]);
      expect([...skillStates(mergeLogs(one, two))]).toEqual([...skillStates(mergeLogs(all))]);
    }),
  );
});
