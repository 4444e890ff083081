import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/lib/grading/types.ts';
import {
  errorOf,
  openCodes,
  ratingOf,
  usualTime,
  type Rated,
  type Rating,
} from '../../src/lib/practice/rating.ts';

/*
 * The thresholds are ours: no published source divides a hand skill so. What is held here is that they are as documented, and that
 * more error, more help and more tries never give a better rating (derived).
 */
const right: Rated = {
  result: 'accepted',
  wrong: 0,
  error: 0.5,
  hints: 0,
  worked: false,
  seconds: 60,
  madeGood: false,
};

describe('the rating follows from what was measured', () => {
  it.each<[string, Partial<Rated>, number | undefined, Rating | undefined]>([
    ['right at once, by one’s own hand', {}, 60, 'good'],
    ['exact and as quick as usual', { error: 0.25 }, 60, 'easy'],
    ['exact, with no usual time to compare with', { error: 0 }, undefined, 'good'],
    ['exact but slower than usual', { error: 0, seconds: 61 }, 60, 'good'],
    ['nothing in it had a tolerance', { error: null, seconds: 10 }, 60, 'good'],
    ['only just within the tolerance', { error: 0.76 }, 60, 'hard'],
    ['three times slower than usual', { seconds: 181 }, 60, 'hard'],
    ['with one hint', { hints: 1 }, 60, 'hard'],
    ['with all hints', { hints: 3 }, 60, 'again'],
    ['at the second try', { wrong: 1 }, 60, 'hard'],
    ['at the second try, made good by a second chance', { wrong: 1, madeGood: true }, 60, 'good'],
    ['after the worked solution', { worked: true, error: 0 }, 60, 'again'],
    ['not right', { result: 'needsWork', wrong: 2, error: 4 }, 60, 'again'],
    ['not right, made good by a second chance', { result: 'needsWork', madeGood: true }, 60, 'hard'],
    ['unfinished', { result: 'notReady' }, 60, undefined],
  ])('%s', (_, change, usual, rating) => {
    expect(ratingOf({ ...right, ...change }, usual)).toBe(rating);
  });

  it('is never better for more error, more hints, more tries, more time or a look at the solution', () => {
    const rank = (rating: Rating | undefined) => ['again', 'hard', 'good', 'easy'].indexOf(rating!);
    const rated = fc.record({
      result: fc.constantFrom('accepted' as const, 'needsWork' as const),
      wrong: fc.nat(4),
      error: fc.double({ min: 0, max: 2, noNaN: true }),
      hints: fc.nat(4),
      worked: fc.boolean(),
      seconds: fc.nat(600),
      madeGood: fc.boolean(),
    });
    const usual = fc.option(fc.integer({ min: 1, max: 300 }), { nil: undefined });
    fc.assert(
      fc.property(rated, usual, fc.double({ min: 0, max: 2, noNaN: true }), (one, time, more) => {
        const now = rank(ratingOf(one, time));
        for (const worse of [
          { error: one.error + more },
          { hints: one.hints + 1 },
          { wrong: one.wrong + 1 },
          { seconds: one.seconds + 100 * more },
          { worked: true },
          { result: 'needsWork' as const },
          { madeGood: false },
        ])
          // Leaving it wrong and making it good counts as hard, and after the solution as again: there it may be better.
          if (!(worse.result && one.madeGood))
            expect(rank(ratingOf({ ...one, ...worse }, time))).toBeLessThanOrEqual(now);
      }),
    );
  });
});

describe('one’s own usual time', () => {
  it('is the middle one, once there are three', () => {
    expect(usualTime([10, 20])).toBeUndefined();
    expect(usualTime([50, 10, 20])).toBe(20);
    expect(usualTime([50, 10, 20, 30])).toBe(25);
  });
});

const finding = (change: Partial<Finding>): Finding => ({
  check: 'x',
  code: 'x/y',
  state: 'right',
  unit: 'mm',
  ...change,
});

describe('the error of a mark in tolerances', () => {
  it.each<[string, readonly Partial<Finding>[], number | null]>([
    ['no finding', [], null],
    ['a matter of yes or no', [{ state: 'wrong', unit: 'text' }], null],
    ['half the tolerance', [{ measured: 11, expected: 10, tolerance: 2 }], 0.5],
    [
      'the largest of two, whichever sign',
      [
        { measured: 11, expected: 10, tolerance: 2 },
        { state: 'wrong', measured: 7, expected: 10, tolerance: 2 },
      ],
      1.5,
    ],
    ['in a range', [{ measured: 12, expected: [10, 25], tolerance: 1 }], 0],
    ['beyond a range', [{ measured: 27, expected: [10, 25], tolerance: 4 }], 0.5],
    ['no tolerance', [{ measured: 27, expected: 25, tolerance: 0 }], null],
    ['a note says nothing', [{ state: 'note', measured: 27, expected: 25, tolerance: 1 }], null],
  ])('%s', (_, findings, error) => {
    expect(errorOf(findings.map(finding))).toBe(error);
  });

  it('keeps the codes of what is wrong or missing, each once', () => {
    const all = [
      { code: 'b/c', state: 'wrong' },
      { code: 'a/b', state: 'missing' },
      { code: 'b/c', state: 'wrong' },
      { code: 'a/a', state: 'right' },
      { code: 'a/n', state: 'note' },
    ] as const;
    expect(openCodes(all.map(finding))).toEqual(['a/b', 'b/c']);
  });
});
