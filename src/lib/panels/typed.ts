import { degrees, radians } from '../geometry/trig.ts';
import { parseLength } from '../strings/parse-length.ts';
import { rulerOf, sizeOf, type Units } from '../strings/units.ts';
import type { Field, Value } from './forms/form.ts';

const INCH = 25.4;

/** The value of a field from what was typed in the learner's units: mm, radians, a number (NaN when it is none) or the text. */
export function fromTyped(field: Field, typed: string, units: Units): Value {
  if (field.kind === 'text' || field.kind === 'choice') return typed;
  if (field.kind === 'length') return parseLength(typed, units) ?? Number.NaN;
  const text = typed.replace(/[°%]/, '').replace(',', '.').replace('−', '-').trim();
  const value = text === '' ? Number.NaN : Number(text);
  return field.kind === 'angle' ? radians(value) : value;
}

/** What stands in a field's box: the value in the learner's units, with digits enough to measure by. */
export function toTyped(field: Field, units: Units): string {
  if (typeof field.value !== 'number') return String(field.value);
  const inches = field.kind === 'length' && rulerOf(units) === 'inch';
  const length = (mm: number): number => mm / sizeOf(units) / (inches ? INCH : 1);
  const value =
    field.kind === 'length'
      ? length(field.value)
      : field.kind === 'angle'
        ? degrees(field.value)
        : field.value;
  return String(Number(value.toFixed(inches ? 4 : 2)));
}

/** The unit written behind a field's box. */
export function unitOf(field: Field, units: Units): string {
  if (field.kind === 'length') return rulerOf(units) === 'inch' ? 'in' : 'mm';
  if (field.kind === 'angle') return '°';
  return field.kind === 'percent' ? '%' : '';
}
