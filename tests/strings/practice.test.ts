import { describe, expect, it } from 'vitest';
import {
  comesAgain,
  dueReason,
  formatTime,
  inDays,
  skillName,
  type DueFacts,
} from '../../src/lib/strings/practice.ts';

describe('what a skill is called', () => {
  it.each([
    ['waist-to-side/slash/plain', 'Waist dart to the side seam, slash and spread'],
    ['side-to-low-side/pivot/cap', 'Side dart to the low side seam, pin and pivot, with its folded cap'],
    ['waist-to-two/slash/plain', 'Waist dart into two darts, slash and spread'],
    ['both-to-armhole/angle/plain', 'Both darts to the armhole, by a typed angle'],
    ['waist/drawn/backed-off', 'Waist dart, drawn in its place, backed off'],
    [
      'waist-to-armhole-line/slash/princess',
      'Side dart into the armhole princess line, slash and spread, as a princess seam',
    ],
    ['notches', 'Marking notches'],
    ['a-skill-gone', 'A skill gone'],
    ['constructor', 'Constructor'],
    ['a-b/odd-way/odd-end', 'A b, odd way, odd end'],
  ])('%s', (id, name) => expect(skillName(id)).toBe(name));
});

const facts: DueFacts = { reason: 'fading', since: 6, overdue: 0, recall: 0.84, hints: 0 };

describe('why something is due', () => {
  it.each<[Partial<DueFacts>, string]>([
    [{}, 'Last done 6 days ago. By now it would come right about 8 times in 10.'],
    [{ reason: 'went-wrong', since: 1 }, 'Last tried yesterday, and it did not come right.'],
    [{ reason: 'helped', hints: 1 }, 'Last done 6 days ago with 1 hint.'],
    [{ reason: 'helped', hints: 2, overdue: 1 }, 'Last done 6 days ago with 2 hints. Due since yesterday.'],
    [
      { reason: 'shown', overdue: 4 },
      'Last done 6 days ago, after the solution was shown: now by your own hand. Due for 4 days.',
    ],
    [{ reason: 'a-reason-to-come' }, 'Last done 6 days ago.'],
  ])('%j', (change, text) => expect(dueReason({ ...facts, ...change })).toBe(text));
});

it('says days and times in words', () => {
  expect([-2, 0, 1, 5].map(inDays)).toEqual(['today', 'today', 'tomorrow', 'in 5 days']);
  expect([-2, -1, 0, 5].map(comesAgain)).toEqual([
    ...['Due for 2 days.', 'Due since yesterday.', 'Comes again today.', 'Comes again in 5 days.'],
  ]);
  expect([4.4, 59, 89, 90, 3599, 3600, 4800].map(formatTime)).toEqual([
    ...['4 s', '59 s', '1 min', '2 min', '1 h', '1 h', '1 h 20 min'],
  ]);
});
