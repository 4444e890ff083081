import { describe, expect, it } from 'vitest';
import { stepsIn } from '../../src/lib/progress/kept-steps.ts';
import { standingOf } from '../../src/lib/progress/standing.ts';
import type { Backend } from '../../src/lib/progress/store.ts';

const lesson = { id: 'a', steps: ['one', 'two', 'three'] };
const nothing = { done: {}, testedOut: {} };
const kept = (step: string, flagged: string[] = []) => ({ step, flagged });

describe('how a lesson stands', () => {
  it('is not begun where nothing is kept', () => {
    expect(standingOf(lesson, nothing, undefined)).toEqual({ state: 'fresh' });
  });

  it('is under way at the step that is open, with the flags that wait', () => {
    expect(standingOf(lesson, nothing, kept('two', ['one']))).toEqual({
      state: 'begun',
      step: 1,
      flagged: 1,
    });
  });

  it('is under way at its beginning where the open step is one that is gone', () => {
    expect(standingOf(lesson, nothing, kept('gone'))).toEqual({ state: 'begun', step: 0, flagged: 0 });
  });

  it('is done for good, also while it is worked on again', () => {
    const course = { ...nothing, done: { a: { on: '2026-05-31', content: 1 } } };
    expect(standingOf(lesson, course, kept('one'))).toEqual({ state: 'done', on: '2026-05-31' });
  });

  it('is tested out by its own test or by one that builds on it; done says more', () => {
    const testedOut = { a: { on: '2026-05-30', by: 'b' } };
    expect(standingOf(lesson, { ...nothing, testedOut }, kept('one'))).toEqual({
      state: 'tested',
      on: '2026-05-30',
      by: 'b',
    });
    const both = { testedOut, done: { a: { on: '2026-05-31', content: 1 } } };
    expect(standingOf(lesson, both, undefined)).toEqual({ state: 'done', on: '2026-05-31' });
  });

  it('does not follow from what was achieved in other lessons', () => {
    const course = {
      done: { b: { on: '2026-05-31', content: 1 } },
      testedOut: { c: { on: '2026-05-31', by: 'a' } },
    };
    expect(standingOf(lesson, course, undefined)).toEqual({ state: 'fresh' });
  });
});

describe('the open step of each lesson', () => {
  const backendOf = (texts: Record<string, string>): Backend => ({
    get: async (key) => texts[key],
    put: async () => {},
  });

  it('is read lightly, and one record that cannot be read hides no other', async () => {
    const texts = {
      a: '{"step":"two","flagged":["one"],"attempt":"unread"}',
      b: '{"step":',
      c: '{"step":7}',
      d: 'null',
      e: '{"step":"one","flagged":"all"}',
      'a:test': '{"step":"three","flagged":[]}',
    };
    expect(await stepsIn(backendOf(texts), ['a', 'b', 'c', 'd', 'e', 'f'])).toEqual({
      a: { step: 'two', flagged: ['one'] },
      e: { step: 'one', flagged: [] },
    });
  });
});
