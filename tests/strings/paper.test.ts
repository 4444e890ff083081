import { describe, expect, it } from 'vitest';
import { paperText, paperTolerances, paperValue } from '../../src/lib/strings/paper.ts';

// An inch is 25.4 mm exactly, half a turn is 180° (definitions).
describe('fields of what was measured on paper', () => {
  it.each([
    ['2 9/16', 'inch', 65.0875],
    ['2.56', 'inch', 65.024],
    ['65,5', 'mm', 65.5],
    ['6.5 cm', 'mm', 65],
  ] as const)('%s typed with %s set is %f mm', (text, units, mm) => {
    expect(paperValue(text, 'intake', units)).toBeCloseTo(mm, 9);
  });
  it.each([
    ['18', Math.PI / 10],
    ['18,5°', (18.5 * Math.PI) / 180],
    ['180', Math.PI],
  ])('%s is an angle', (text, radians) => {
    expect(paperValue(text, 'dart-angle', 'inch')).toBeCloseTo(radians, 12);
  });
  it.each(['-3', '0', '1/0', 'x', '9999', '3 4'])('%s is no length', (text) => {
    expect(paperValue(text, 'intake', 'mm')).toBeNaN();
  });
  it.each(['-3', '181', '1/2', 'x'])('%s is no angle', (text) => {
    expect(paperValue(text, 'dart-angle', 'mm')).toBeNaN();
  });
  it('empty is not measured, and not wrong', () => {
    expect(paperValue('  ', 'intake', 'mm')).toBeUndefined();
    expect(paperValue('', 'dart-angle', 'mm')).toBeUndefined();
  });
  it.each([
    [65.0875, 'inch', '2 9/16'],
    [64.29375, 'inch', '2 17/32'],
    [65.5, 'inch', '2.5787'],
    [25.4, 'inch', '1'],
    [65.5, 'mm', '65.5'],
  ] as const)('%f mm stands in %s as %s, and is read again', (mm, units, text) => {
    expect(paperText(mm, 'intake', units)).toBe(text);
    expect(paperValue(text, 'intake', units)).toBeCloseTo(mm, 2);
  });
  it('an angle stands in degrees', () =>
    expect(paperText((18.5 * Math.PI) / 180, 'dart-angle', 'inch')).toBe('18.5'));
  it('tolerances are told in the learner’s units, on paper and on the garment', () => {
    expect(paperTolerances(25.4 / 32, Math.PI / 180, 'inch')).toMatch(
      /within 1\/32 in.* 1\/16 in\. .*within 1°/,
    );
    expect(paperTolerances(25.4 / 32, Math.PI / 180, 'mm')).toMatch(/within 0\.8 mm.* 1\.6 mm\. /);
  });
});
