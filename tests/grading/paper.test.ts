import { describe, expect, it } from 'vitest';
import { compareWithPaper } from '../../src/lib/grading/paper.ts';
import { startWork } from '../../src/lib/recipe/start.ts';

// A bust of 1100 mm has a dart of B/4 − 2.5 = 25° (Bunka; memory).
const work = startWork({ measures: { bust: 1100, waist: 900, napeToWaist: 400 }, form: 'waist' });
const dart = 'right/waist-dart';
const degree = Math.PI / 180;
const of = (what: 'dart-angle' | 'leg-length' | 'intake' | 'allowance-width', value: number) =>
  compareWithPaper(work, [{ what, about: dart, value }], 'woven')[0]!;

describe('values measured on half-scale paper', () => {
  it('takes a dart of 25° within a degree, the same at any scale', () => {
    expect(of('dart-angle', 25.9 * degree)).toMatchObject({
      state: 'right',
      unit: 'rad',
      reason: 'protractor',
    });
    expect(of('dart-angle', 24.1 * degree).state).toBe('right');
    expect(of('dart-angle', 26.1 * degree).state).toBe('wrong');
  });

  it('expects half of an intake of 2 L sin(θ/2) (trade notes, derived), within 0.8 mm of a ruler', () => {
    const half = of('leg-length', 1).expected as number;
    const intake = 2 * half * Math.sin(12.5 * degree);
    expect(of('intake', intake)).toMatchObject({
      state: 'right',
      unit: 'mm',
      tolerance: 0.8,
      reason: 'ruler',
    });
    expect(of('intake', intake).expected).toBeCloseTo(intake, 6);
    // 25° at L 150 is 64.93 mm (trade notes): the same ratio here.
    expect(intake / half).toBeCloseTo(64.93 / 150, 4);
    expect(of('intake', intake + 0.79).state).toBe('right');
    expect(of('intake', intake - 0.81).state).toBe('wrong');
  });

  it('names half and full scale mixed, and no cause where none is near', () => {
    const half = of('leg-length', 1).expected as number;
    expect(of('leg-length', 2 * half).cause).toEqual({ code: 'scale-mixed' });
    expect(of('leg-length', half + 5).cause).toBeUndefined();
  });

  it('is missing where the table has no such thing, or the value is no number', () => {
    expect(of('allowance-width', 5).state).toBe('missing');
    expect(of('intake', NaN).state).toBe('missing');
  });
});
