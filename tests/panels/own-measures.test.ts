import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { keepUnit, readMeasures, typedMeasures } from '../../src/lib/panels/bench/own-measures.ts';
import { measureRange, MEASURES, unfitMeasure } from '../../src/lib/pattern/figures.ts';
import { anyMeasures } from '../pattern/bodice.ts';

const typed = (bust: string, waist: string, napeToWaist: string) => ({ bust, waist, napeToWaist });
const problems = (...of: Parameters<typeof typed>) => {
  const read = readMeasures(typed(...of), 'mm');
  return 'problems' in read ? read.problems : {};
};

describe('own measures that are typed', () => {
  it('are read in the units that are set, or in those written behind', () => {
    const mm = { bust: 1016, waist: 660, napeToWaist: 380 };
    expect(readMeasures(typed('1016,0', '66 cm', '380 mm'), 'mm')).toEqual({ ok: mm });
    expect(readMeasures(typed('40', '66 cm', '380 mm'), 'inch')).toEqual({ ok: mm });
  });

  // Source: the limits of the draft (bust 700 to 1300, waist 480 to 1300 and at most 60 mm above the bust, nape to waist 320 to 480).
  it('are told apart: each with what was expected and what was found', () => {
    expect(problems('840', '660', '')).toEqual({
      napeToWaist: 'Nape to waist: the draft works with 320 mm to 480 mm; here is nothing yet.',
    });
    expect(problems('84', '660', '380')).toEqual({
      bust: 'Bust: the draft works with 700 mm to 1300 mm; here is “84”.',
    });
    expect(problems('700', '800', '380')).toEqual({
      waist: 'Waist: the draft works with 480 mm to 760 mm beside this bust; here is “800”.',
    });
    expect(problems('-840', '<b>', '1e9')).toMatchObject({
      waist: expect.stringContaining('“<b>”') as string,
    });
  });

  it('are refused exactly where the draft refuses them', () => {
    const any = fc.record({
      bust: fc.integer({ min: 600, max: 1400 }),
      waist: fc.integer({ min: 400, max: 1400 }),
      napeToWaist: fc.integer({ min: 300, max: 500 }),
    });
    fc.assert(
      fc.property(any, (m) => {
        const read = readMeasures(typed(`${m.bust}`, `${m.waist}`, `${m.napeToWaist}`), 'mm');
        expect('ok' in read).toBe(unfitMeasure(m) === undefined);
        if ('ok' in read) return;
        const told = Object.keys(read.problems);
        expect(told).toContain(unfitMeasure(m));
        for (const key of MEASURES) {
          const { min, max } = measureRange(key, m);
          expect(told.includes(key)).toBe(m[key] < min || m[key] > max);
        }
      }),
    );
  });

  it('stand in the boxes so that they are read again with the same bits, also after the units were changed', () => {
    fc.assert(
      fc.property(anyMeasures, fc.constantFrom('mm', 'inch'), fc.nat(999), (m, units, more) => {
        const measures = { ...m, waist: m.waist + more / 1000 };
        if (unfitMeasure(measures) !== undefined) return;
        const boxes = typedMeasures(measures, units);
        expect(readMeasures(boxes, units)).toEqual({ ok: measures });
        const other = units === 'mm' ? 'inch' : 'mm';
        expect(readMeasures(keepUnit(boxes, units), other)).toEqual({ ok: measures });
      }),
    );
  });
});
