import type { Command, CommandName, Fabric, Work } from '../../recipe/types.ts';
import type { Units } from '../../strings/units.ts';

/** A value of a form: mm, radians, a count, a text, an option's value, or yes/no. */
export type Value = number | string | boolean;
export type Values = Readonly<Record<string, Value>>;

export interface Option {
  readonly value: string;
  readonly label: string;
}

/** One labelled box of a form. Lengths are mm full size, angles radians; the panel shows them in the learner's units. */
export interface Field {
  readonly id: string;
  readonly label: string;
  readonly kind: 'length' | 'angle' | 'percent' | 'count' | 'text' | 'choice' | 'check';
  readonly value: Value;
  readonly options?: readonly Option[];
  /** What was chosen stays for the next time that the form is used: how it is measured, rather than how much. */
  readonly keeps?: true;
  /** Only shown while this field has this value. */
  readonly when?: { readonly field: string; readonly is: Value };
}

/** A way to give a command by typed values alone, without the pointer. */
export interface Form {
  readonly id: string;
  readonly title: string;
  readonly note?: string;
  readonly fields: readonly Field[];
  readonly submit: string;
  /** The command for these values, or a plain sentence saying what is wrong with them. */
  readonly build: (values: Values) => Command | string;
}

/** Makes the forms of one command from what lies on the table; an empty list when it has no footing yet. */
export type FormMaker = (
  work: Work,
  fabric: Fabric,
  units: Units,
  asked?: readonly string[],
) => readonly Form[];

export type FormMakers = Readonly<Partial<Record<CommandName, FormMaker>>>;

export const length = (id: string, label: string, value = 0): Field => ({ id, label, kind: 'length', value });
export const angle = (id: string, label: string, value = 0): Field => ({ id, label, kind: 'angle', value });
export const percent = (id: string, label: string, value = 50): Field => ({
  id,
  label,
  kind: 'percent',
  value,
});
export const choice = (id: string, label: string, options: readonly Option[], value?: string): Field => ({
  id,
  label,
  kind: 'choice',
  options,
  value: value ?? options[0]?.value ?? '',
});

export const text = (values: Values, id: string): string => String(values[id] ?? '');
/** A number of the form; NaN when the box is empty or holds no number. */
export const number = (values: Values, id: string): number => {
  const value = values[id];
  return typeof value === 'number' ? value : Number.NaN;
};

/** A problem sentence when one of the numbers is missing, otherwise undefined. */
export function missingNumber(
  values: Values,
  ids: readonly string[],
  fields: readonly Field[],
): string | undefined {
  const bad = ids.find((id) => !Number.isFinite(number(values, id)));
  if (bad === undefined) return undefined;
  return `${fields.find((field) => field.id === bad)?.label ?? bad}: a number is expected.`;
}
