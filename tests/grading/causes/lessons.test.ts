import { describe, expect, test } from 'vitest';
import { namedIn } from './named.ts';
import { oddInLessons, rightInLessons, wrongInLessons } from './simulate-lessons.ts';

describe('the cause of a wrong step in a lesson, by its findings or beside them', () => {
  test('is named in at least 95 of 100 of 1,000 simulated attempts, and a wrong one in at most 1', () => {
    let right = 0;
    let wrong = 0;
    const missed = new Map<string, number>();
    for (const one of wrongInLessons(1000)) {
      const named = namedIn(one);
      if (named.length === 1 && named[0] === one.truth) right++;
      else {
        if (named.length > 0) wrong++;
        const key = `${one.truth} -> ${named.join(' and ') || 'none'} in ${one.lesson}/${one.step.id}`;
        missed.set(key, (missed.get(key) ?? 0) + 1);
      }
    }
    const table = JSON.stringify([...missed].sort((a, b) => b[1] - a[1]));
    expect(right, table).toBeGreaterThanOrEqual(950);
    expect(wrong, table).toBeLessThanOrEqual(10);
  }, 180_000);

  test('is named in none of 500 right attempts', () => {
    for (const one of rightInLessons(500)) expect(namedIn(one), `${one.lesson}/${one.step.id}`).toEqual([]);
  }, 60_000);

  test('is named in at most 1 of 100 attempts whose fault comes of no procedure', () => {
    const named = [...oddInLessons(300)].flatMap((one) => {
      const codes = namedIn(one);
      return codes.length > 0 ? [`${codes.join(' and ')} in ${one.lesson}/${one.step.id}`] : [];
    });
    expect(named.length, named.join(', ')).toBeLessThanOrEqual(3);
  }, 60_000);

  test('is never named twice', () => {
    for (const one of wrongInLessons(200, 40_000)) {
      const codes = namedIn(one);
      expect(new Set(codes).size, codes.join(' and ')).toBe(codes.length);
    }
  }, 60_000);
});
