import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatArea } from '../../src/lib/strings/area.ts';
import { parseLength } from '../../src/lib/strings/parse-length.ts';
import { formatAngle, formatLength } from '../../src/lib/strings/units.ts';
import { real } from '../support/real.ts';

// An inch is 25.4 mm exactly (international yard and pound agreement of 1959; common knowledge).
describe('lengths', () => {
  it.each([
    [0, '0 mm', '0 in'],
    [12.7, '12.7 mm', '1/2 in'],
    [9.525, '9.5 mm', '3/8 in'],
    [15.875, '15.9 mm', '5/8 in'],
    [6.35, '6.4 mm', '1/4 in'],
    [25.4, '25.4 mm', '1 in'],
    [30.1625, '30.2 mm', '1 3/16 in'],
    [-3.175, '−3.2 mm', '−1/8 in'],
    [0.5, '0.5 mm', 'under 1/32 in'],
    [0.01, 'under 0.1 mm', '0 in'],
  ])('%f mm is written %s and %s', (mm, metric, inch) => {
    expect(formatLength(mm, 'mm')).toBe(metric);
    expect(formatLength(mm, 'inch')).toBe(inch);
  });

  it('are told in finer parts of an inch where sixteenths are too coarse', () => {
    // 25.4 / 32 = 0.79375 (arithmetic).
    expect(formatLength(0.79375, 'inch', false, 32)).toBe('1/32 in');
    expect(formatLength(64.29375, 'inch', true, 32)).toBe('+2 17/32 in');
    expect(formatLength(0.2, 'inch', false, 32)).toBe('under 1/64 in');
    expect(formatLength(0.79375, 'mm', false, 32)).toBe('0.8 mm');
  });

  it('are half as long on half-scale paper, where an inch is told twice as finely', () => {
    expect(formatLength(90, 'half mm')).toBe('45 mm');
    expect(formatLength(-3.2, 'half mm', true)).toBe('−1.6 mm');
    expect(formatLength(25.4, 'half inch')).toBe('1/2 in');
    // 3.175 mm is 1/8 in, 1.5875 mm 1/16 in of the garment (arithmetic).
    expect(formatLength(1.5875, 'half inch')).toBe('1/32 in');
    expect(formatArea(40_000, 'half mm')).toBe('100 cm²');
    expect(parseLength('45', 'half mm')).toBe(90);
    expect(parseLength('1/2 in', 'half mm')).toBe(25.4);
    expect(parseLength('−3', 'half inch')).toBeCloseTo(-152.4, 9);
  });

  it('have a plus when it is asked for, and never at nothing', () => {
    expect(formatLength(3.2, 'mm', true)).toBe('+3.2 mm');
    expect(formatLength(12.7, 'inch', true)).toBe('+1/2 in');
    expect(formatLength(0, 'mm', true)).toBe('0 mm');
  });

  it.each([
    ['12,5', 'mm', 12.5],
    ['12.5 mm', 'inch', 12.5],
    ['2 cm', 'mm', 20],
    ['1 3/16 in', 'mm', 30.1625],
    ['1-3/16"', 'mm', 30.1625],
    ['5/8', 'inch', 15.875],
    ['−1/8 in', 'mm', -3.175],
    ['-4', 'mm', -4],
  ] as const)('%s typed with %s set is read', (text, units, mm) => {
    expect(parseLength(text, units)).toBeCloseTo(mm, 9);
  });

  it.each(['', 'wide', '1/0', '5 yards', '1 2 3', '1/2/3', '--2', '1e3', 'NaN'])(
    '%s is no length',
    (text) => {
      expect(parseLength(text, 'mm')).toBeUndefined();
    },
  );

  it('come back within half of what is shown when what is written is read again', () => {
    fc.assert(
      fc.property(real(-600, 600), fc.constantFrom('mm' as const, 'inch' as const), (mm, units) => {
        const text = formatLength(mm, units);
        fc.pre(!text.startsWith('under'));
        const half = units === 'mm' ? 0.05 : 25.4 / 32;
        expect(Math.abs(parseLength(text, units)! - mm)).toBeLessThanOrEqual(half + 1e-9);
      }),
    );
  });
});

describe('angles and areas', () => {
  it('are written in degrees to a tenth', () => {
    expect(formatAngle(Math.PI / 6)).toBe('30°');
    expect(formatAngle((-18.25 * Math.PI) / 180)).toMatch(/^−18\.[23]°$/);
    expect(formatAngle(0.0001, true)).toBe('0°');
  });

  it('are written in square centimetres or inches', () => {
    expect(formatArea(10000, 'mm')).toBe('100 cm²');
    expect(formatArea(645.16, 'inch')).toBe('1 sq in');
    expect(formatArea(0.3, 'mm')).toBe('under 0.01 cm²');
  });
});
