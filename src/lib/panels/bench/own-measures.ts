import { measureRange, MEASURES, unfitMeasure } from '../../pattern/figures.ts';
import type { Measures } from '../../pattern/block.ts';
import { measureProblem } from '../../strings/own-measures.ts';
import { parseLength } from '../../strings/parse-length.ts';
import type { RulerUnits } from '../../strings/units.ts';
import { toTyped } from '../typed.ts';

/** What stands in the boxes, as it was typed. */
export type TypedMeasures = Readonly<Record<keyof Measures, string>>;

export const NO_MEASURES: TypedMeasures = { bust: '', waist: '', napeToWaist: '' };

/** Measures in mm as they stand in the boxes: read again they are the same to the last bit. */
export function typedMeasures(measures: Measures, units: RulerUnits): TypedMeasures {
  const typed = (key: keyof Measures): string => {
    const mm = measures[key];
    const text = toTyped({ id: key, label: '', kind: 'length', value: mm }, units);
    return parseLength(text, units) === mm ? text : `${mm} mm`;
  };
  return { bust: typed('bust'), waist: typed('waist'), napeToWaist: typed('napeToWaist') };
}

/** What was typed in units that are not set any more: bare numbers get their unit, so that they mean what they meant. */
export function keepUnit(typed: TypedMeasures, units: RulerUnits): TypedMeasures {
  const kept = (text: string): string =>
    parseLength(text, 'mm') === parseLength(text, 'inch')
      ? text
      : `${text.trim()} ${units === 'mm' ? 'mm' : 'in'}`;
  return { bust: kept(typed.bust), waist: kept(typed.waist), napeToWaist: kept(typed.napeToWaist) };
}

export type ReadMeasures =
  { readonly ok: Measures } | { readonly problems: Readonly<Partial<Record<keyof Measures, string>>> };

/**
 * Reads the three measures that were typed in the learner's units; what the block cannot be drafted with is told for each box, with what
 * was expected beside the other two and what was found. All or nothing.
 */
export function readMeasures(typed: TypedMeasures, units: RulerUnits): ReadMeasures {
  const read = (key: keyof Measures): number => parseLength(typed[key], units) ?? Number.NaN;
  const measures: Measures = { bust: read('bust'), waist: read('waist'), napeToWaist: read('napeToWaist') };
  if (unfitMeasure(measures) === undefined) return { ok: measures };
  const problems = MEASURES.flatMap((key) => {
    const range = measureRange(key, measures);
    if (measures[key] >= range.min && measures[key] <= range.max) return [];
    return [[key, measureProblem(key, range, typed[key], units)] as const];
  });
  return { problems: Object.fromEntries(problems) };
}
